using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting.Statistics;

/// <summary>
/// Quantiles as scipy 1.10.1 gives them; what clipping takes from a normal distribution, by its closed form.
/// </summary>
public class ProbabilityTests
{
    [Theory]
    [InlineData(0.975, 1, 12.7062047364)]
    [InlineData(0.975, 2, 4.3026527299)]
    [InlineData(0.975, 3, 3.1824463053)]
    [InlineData(0.975, 4, 2.7764451052)]
    [InlineData(0.975, 5, 2.5705818366)]
    [InlineData(0.975, 9, 2.2621571627)]
    [InlineData(0.975, 10, 2.228138852)]
    [InlineData(0.975, 30, 2.0422724563)]
    [InlineData(0.995, 16, 2.92078162235)]
    public void StudentQuantiles(double p, double nu, double expected)
    {
        Digits.Printed(expected, Probability.StudentQuantile(p, nu), 1e-9);
        Digits.Printed(-expected, Probability.StudentQuantile(1 - p, nu), 1e-8); // 1 − p is itself rounded
        // the printed value for ν = 5 is 1e-9 high
        Digits.Relative(2 * (1 - p), Probability.StudentTwoSided(expected, nu), 2e-9);
    }

    [Theory]
    [InlineData(0.95, 1, 3.8414588207)]
    [InlineData(0.95, 2, 5.9914645471)]
    [InlineData(0.95, 3, 7.8147279033)]
    [InlineData(0.95, 4, 9.4877290368)]
    [InlineData(0.95, 5, 11.0704976935)]
    [InlineData(0.95, 10, 18.3070380533)]
    [InlineData(0.025, 9, 2.7003895)]
    [InlineData(0.975, 9, 19.0227678)]
    [InlineData(0.025, 99, 73.36108019)]
    [InlineData(0.975, 99, 128.42198864)]
    public void ChiSquaredQuantiles(double p, double nu, double expected)
    {
        double halfUnit = expected
            .ToString(System.Globalization.CultureInfo.InvariantCulture)
            .Split('.')[1]
            .Length switch
        {
            7 => 5e-8,
            8 => 5e-9,
            _ => 5e-11,
        };
        Digits.Printed(expected, Probability.ChiSquaredQuantile(p, nu), Math.Max(halfUnit, 5e-11));
        Digits.Relative(1 - p, Probability.ChiSquaredTail(expected, nu), 1e-6);
    }

    [Fact]
    public void IntervalOfAStandardDeviation()
    {
        Digits.Printed(0.8780068454, Math.Sqrt(99 / Probability.ChiSquaredQuantile(0.975, 99)), 5e-11);
        Digits.Printed(1.1616752553, Math.Sqrt(99 / Probability.ChiSquaredQuantile(0.025, 99)), 5e-11);
    }

    [Theory]
    // 60 614 and 64 892 pixels above a rate: the library's inverse throws
    [InlineData(121_228), InlineData(129_784)]
    [InlineData(199_999), InlineData(200_001)] // both sides of where Newton's steps are left out
    [InlineData(5_403_222)] // 2 701 610 pixels above a rate: the library's inverse throws
    [InlineData(48_000_000)]
    public void ChiSquaredQuantilesOfManyDegreesOfFreedom(double nu)
    {
        foreach (double p in new[] { 1e-6, 0.025, 0.5, 0.84134474606854293, 0.975 })
        {
            // Cornish and Fisher's expansion in its first four terms (Goldberg and Levine 1946, Ann. Math. Stat. 17,
            // 216); the next is of order 1/ν.
            double z = Probability.NormalQuantile(p),
                sigma = Math.Sqrt(2 * nu),
                expected = nu + sigma * z + 2.0 / 3 * (z * z - 1) + (z * z * z - 7 * z) / (9 * sigma);
            Assert.InRange((Probability.ChiSquaredQuantile(p, nu) - expected) / sigma, -1e-5, 1e-5);
        }
    }

    [Theory, InlineData(0, 2.5), InlineData(3, 2.5), InlineData(40, 60)]
    public void TailsOfPoissonCounts(int most, double mean)
    {
        double term = Math.Exp(-mean),
            sum = term; // e^−μ Σ μᵏ/k!
        for (int k = 1; k <= most; k++)
            sum += term *= mean / k;
        Digits.Relative(sum, Probability.PoissonAtMost(most, mean), 1e-12);
    }

    [Fact]
    public void NormalQuantilesAndTails()
    {
        Digits.Relative(1.959963984540054, Probability.NormalQuantile(0.975), 1e-14);
        Digits.Printed(2.5758293035489, Probability.NormalQuantile(0.995), 5e-14);
        Digits.Relative(2.699796063e-3, Probability.NormalTwoSided(3), 2e-10);
        Digits.Relative(5.733031437583866e-7, Probability.NormalTwoSided(5), 1e-12);
        Digits.Relative(1.973175290e-9, Probability.NormalTwoSided(6), 2.6e-10);
        Digits.Relative(9.865876450e-10, Probability.NormalTail(6), 1e-9);
    }

    [Fact]
    public void DriftBetweenTwoProfiles()
    {
        double z = 0.04 / Math.Sqrt(0.012 * 0.012 + 0.015 * 0.015);
        Digits.Printed(2.082316825181, z, 5e-13);
        Digits.Printed(0.03731354, Probability.NormalTwoSided(z), 5e-9);
    }

    [Fact]
    public void WideningTurnsNormalIntoStudent()
    {
        Digits.Relative(2.7764451052 / 1.959963984540054, Probability.CoverageWidening(4), 1e-10);
        Assert.Equal(1, Probability.CoverageWidening(double.PositiveInfinity));
    }
}
