using MathNet.Numerics.Random;

namespace SensorProfile.Fitting.Statistics;

/// <summary>Uncertainty of any statistic by resampling with replacement (Efron 1979, Ann. Stat. 7, 1).</summary>
/// <remarks>The seed is part of the result: the same seed gives the same bits, whatever the machine.</remarks>
/// <param name="Estimate">The statistic of the data themselves.</param>
/// <param name="StandardError">Standard deviation of the statistic over the resamples.</param>
/// <param name="Low">Lower percentile limit.</param> <param name="High">Upper percentile limit.</param>
internal sealed record Bootstrap(double Estimate, double StandardError, double Low, double High)
{
    /// <summary>Resamples the data.</summary>
    /// <param name="values">The data, at least two.</param>
    /// <param name="statistic">Computes the statistic of one resample; it may reorder the array it is given.</param>
    /// <param name="seed">Seed of the generator (xoshiro256**).</param>
    /// <param name="resamples">Number of resamples, at least 2; 1000 or more for the limits.</param>
    /// <param name="confidence">Two-sided confidence of the limits.</param>
    public static Bootstrap Of(
        ReadOnlySpan<double> values,
        Func<double[], double> statistic,
        int seed,
        int resamples = 2000,
        double confidence = 0.95
    )
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(values.Length, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(resamples, 2);
        var random = new Xoshiro256StarStar(seed, threadSafe: false);
        var results = new double[resamples];
        var sample = new double[values.Length];
        for (int r = 0; r < resamples; r++)
        {
            for (int i = 0; i < sample.Length; i++)
                sample[i] = values[random.Next(values.Length)];
            results[r] = statistic(sample);
        }
        double standardError = Moments.Of(results).StandardDeviation;
        Array.Sort(results);
        return new Bootstrap(
            statistic(values.ToArray()),
            standardError,
            OrderStatistics.QuantileOfSorted(results, (1 - confidence) / 2),
            OrderStatistics.QuantileOfSorted(results, (1 + confidence) / 2)
        );
    }
}
