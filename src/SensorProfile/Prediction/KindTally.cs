using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Prediction;

/// <summary>Residuals of the pixels of one kind in one comparison.</summary>
internal sealed class KindTally
{
    private const double Sigmas = 1.959963984540054; // 95 % of a normal distribution
    private const int MinForRobust = 8;

    private readonly List<double> residuals = [],
        expected = [],
        noise = [];
    private int within;

    /// <summary>Adds a pixel: residual and variances, e- and e-².</summary>
    public void Add(double residual, double noiseVariance, double predictionVariance)
    {
        double total = noiseVariance + predictionVariance;
        residuals.Add(residual);
        expected.Add(total);
        noise.Add(noiseVariance);
        if (residual * residual <= Sigmas * Sigmas * total)
            within++;
    }

    /// <summary>The figures; null without a pixel.</summary>
    public PredictionFigures? Figures()
    {
        int n = residuals.Count;
        if (n == 0)
            return null;
        double[] all = [.. residuals];
        double spread =
            n >= MinForRobust
                ? OrderStatistics.MadToSigma * OrderStatistics.MedianAbsoluteDeviation(all, 0)
                : Math.Sqrt(all.Average(r => r * r));
        return Make(
            n,
            (double)within / n,
            spread,
            Math.Sqrt(OrderStatistics.Median([.. noise])),
            Math.Sqrt(OrderStatistics.Median([.. expected]))
        );
    }

    /// <summary>
    /// Several sets as one: shares by their pixels, deviations as root mean squares; null without any.
    /// </summary>
    public static PredictionFigures? Pool(IEnumerable<PredictionFigures?> sets)
    {
        PredictionFigures[] known = [.. sets.OfType<PredictionFigures>()];
        long n = known.Sum(f => f.Pixels);
        if (n == 0)
            return null;
        double Mean(Func<PredictionFigures, double> of) => known.Sum(f => f.Pixels * of(f)) / n;
        return Make(
            n,
            Mean(f => f.Coverage),
            Math.Sqrt(Mean(f => f.Residual.Value * f.Residual.Value)),
            Math.Sqrt(Mean(f => f.Noise * f.Noise)),
            Math.Sqrt(Mean(f => f.Expected * f.Expected))
        );
    }

    // The MAD of n normal values scatters by 1.65/√(2n) of itself: its efficiency is 37 % of the standard deviation's,
    // 1/√0.37 = 1.65.
    private static PredictionFigures Make(long n, double coverage, double residual, double noise, double expected) =>
        new(
            n,
            coverage,
            new(
                residual,
                residual * 1.65 / Math.Sqrt(2.0 * n),
                "e-",
                n,
                "robust standard deviation of computed minus taken"
            ),
            noise,
            expected
        );
}
