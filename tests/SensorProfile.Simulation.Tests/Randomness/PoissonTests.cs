using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Tests.Randomness;

public class PoissonTests
{
    private const int Draws = 400_000;

    public static TheoryData<double> Means =>
        [0.001, 0.01, 0.1, 0.125, 0.249, 0.5, 1, 3, 6.5, 9.999, 14, 31.99, 32, 33.3, 100, 1000, 10_000, 100_000];

    /// <summary>Mean, variance and third central moment of a Poisson variable are all λ. Standard errors of the
    /// sample's from the population moments
    /// μ₄ = λ + 3λ², μ₆ = λ + 25λ² + 15λ³ (from the cumulants, all λ): var(m₂) = (μ₄ − μ₂²)/N, var(m₃) = (μ₆ − μ₃² −
    /// 6μ₄μ₂ + 9μ₂³)/N
    /// (Stuart and Ord, Kendall's Advanced Theory of Statistics, ch. 10). 4.5 standard errors in 54 comparisons: 3e-4
    /// by chance.</summary>
    [Theory, MemberData(nameof(Means))]
    public void MomentsAreThoseOfTheDistribution(double mean)
    {
        SampleMoments found = SampleMoments.Of(Sample(mean));
        double fourth = mean + 3 * mean * mean;
        double sixth = mean + 25 * mean * mean + 15 * mean * mean * mean;
        double thirdVariance = sixth - mean * mean - 6 * fourth * mean + 9 * mean * mean * mean;
        Assert.InRange((found.Mean - mean) / Math.Sqrt(mean / Draws), -4.5, 4.5);
        Assert.InRange((found.Second - mean) / Math.Sqrt((fourth - mean * mean) / Draws), -4.5, 4.5);
        Assert.InRange((found.Third - mean) / Math.Sqrt(thirdVariance / Draws), -4.5, 4.5);
    }

    /// <summary>χ² against the exact probabilities, neighbouring counts pooled until 50 are expected.</summary>
    [Theory, MemberData(nameof(Means))]
    public void DistributionIsExact(double mean)
    {
        double[] sample = Sample(mean);
        int least = (int)Math.Max(0, Math.Floor(mean - 6 * Math.Sqrt(mean) - 1));
        int most = (int)Math.Ceiling(mean + 7 * Math.Sqrt(mean) + 12);
        long[] counts = new long[most - least + 1];
        foreach (double value in sample)
        {
            counts[(int)Math.Clamp(value, least, most) - least]++;
        }
        (List<double> expected, List<long> observed) = Pool(counts, Probabilities(mean, least, most));
        if (expected.Count > 3)
        {
            Assert.InRange(ChiSquare.Deviate(expected, observed), -4.5, 4.5);
        }
        else
        {
            // two or three cells: the first one alone, by its binomial error
            double share = expected[0] / Draws;
            Assert.InRange((observed[0] - expected[0]) / Math.Sqrt(Draws * share * (1 - share)), -4.5, 4.5);
        }
    }

    [Theory, InlineData(0), InlineData(-1)]
    public void NoMeanGivesNoEvents(double mean)
    {
        var random = RandomStream.For(1, Purpose.Row);
        Assert.Equal(0, Poisson.Draw(ref random, mean));
    }

    /// <summary>
    /// p(k) by the ratio p(k)/p(k − 1) = λ/k, outwards from the most probable count, then scaled to a sum of 1: no
    /// factorial is used.
    /// </summary>
    private static double[] Probabilities(double mean, int least, int most)
    {
        double[] p = new double[most - least + 1];
        int mode = (int)Math.Clamp(Math.Floor(mean), least, most);
        p[mode - least] = 1;
        for (int k = mode + 1; k <= most; k++)
        {
            p[k - least] = p[k - least - 1] * mean / k;
        }
        for (int k = mode - 1; k >= least; k--)
        {
            p[k - least] = p[k - least + 1] * (k + 1) / mean;
        }
        double sum = p.Sum();
        return [.. p.Select(v => v / sum)];
    }

    private static (List<double> Expected, List<long> Observed) Pool(long[] counts, double[] probabilities)
    {
        List<double> expected = [0];
        List<long> observed = [0];
        for (int i = 0; i < counts.Length; i++)
        {
            if (expected[^1] >= 50 && (1 - probabilities.Take(i).Sum()) * Draws >= 50)
            {
                expected.Add(0);
                observed.Add(0);
            }
            expected[^1] += probabilities[i] * Draws;
            observed[^1] += counts[i];
        }
        return (expected, observed);
    }

    private static double[] Sample(double mean)
    {
        var random = RandomStream.For(20311014, Purpose.Row, BitConverter.DoubleToInt64Bits(mean));
        double[] sample = new double[Draws];
        for (int i = 0; i < sample.Length; i++)
        {
            sample[i] = Poisson.Draw(ref random, mean);
        }
        return sample;
    }
}
