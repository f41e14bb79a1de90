using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting;

/// <summary>
/// Holm's adjusted p (Holm 1979, Scand. J. Stat. 6, 65) and AICc = χ² + 2k + 2k(k+1)/(n−k−1).
/// </summary>
public class ModelComparisonTests
{
    [Theory]
    [InlineData(new[] { 0.01, 0.04, 0.03, 0.005 }, new[] { 0.03, 0.06, 0.06, 0.02 })]
    [InlineData(new[] { 0.01, 0.04, 0.20, 0.03, 0.005, 0.07 }, new[] { 0.05, 0.12, 0.20, 0.12, 0.03, 0.14 })]
    [InlineData(new[] { 0.03 }, new[] { 0.03 })]
    [InlineData(new[] { 0.6, 0.9 }, new[] { 1.0, 1.0 })]
    public void HolmAdjustedProbabilities(double[] raw, double[] expected)
    {
        double[] adjusted = HolmAdjustment.Adjust(raw);
        for (int i = 0; i < raw.Length; i++)
        {
            Digits.Printed(expected[i], adjusted[i], 1e-15);
            Assert.InRange(adjusted[i], raw[i], Math.Min(1, raw.Length * raw[i]) + 1e-15);
        }
        for (int i = 0; i < raw.Length; i++)
        for (int j = 0; j < raw.Length; j++)
            if (raw[i] < raw[j])
                Assert.True(adjusted[i] <= adjusted[j]);
    }

    [Fact]
    public void CorrectedAkaike()
    {
        Digits.Printed(8.216482305, InformationCriterion.Corrected(0.2164823053, 6, 2)!.Value, 1e-9);
        Digits.Printed(10.378545506, InformationCriterion.Corrected(2.378545506, 6, 2)!.Value, 1e-9);
        Assert.Null(InformationCriterion.Corrected(1, 3, 2));
    }

    [Fact]
    public void AkaikeWeightsFallByTheHalfDifference()
    {
        double[] weights = InformationCriterion.Weights([10, 12, null]);
        Digits.Relative(Math.E, weights[0] / weights[1], 1e-14);
        Digits.Relative(1, weights.Sum(), 1e-15);
        Assert.Equal(0, weights[2]);
        Assert.All(InformationCriterion.Weights([null, null]), w => Assert.Equal(0, w));
    }
}
