using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting.Statistics;

/// <summary>NIST StRD univariate sets, and numpy's variance with N and N−1.</summary>
public class MomentsTests
{
    // Tolerances as in the rows: the decimal input of NumAcc3 and NumAcc4 is not exact in a double.
    [DataTheory("nist-strd")]
    [InlineData("NumAcc1", 10000002, 1, -0.5, 0, 0, 0)]
    [InlineData("NumAcc2", 1.2, 0.1, -0.999, 1e-15, 1e-14, 1e-12)]
    [InlineData("NumAcc3", 1000000.2, 0.1, -0.999, 1e-15, 4e-10, 1e-8)]
    [InlineData("NumAcc4", 10000000.2, 0.1, -0.999, 1e-15, 6e-9, 1e-7)]
    [InlineData("Lew", -177.435, 277.332168044316, -0.307304800605679, 1e-13, 1e-13, 1e-13)]
    [InlineData("Lottery", 518.958715596330, 291.699727470969, -0.120948622967393, 1e-13, 1e-13, 1e-13)]
    [InlineData("Mavro", 2.001856, 0.000429123454003053, 0.937989183438248, 1e-13, 1e-12, 1e-12)]
    [InlineData("Michelso", 299.8524, 0.0790105478190518, 0.535199668621283, 1e-13, 1e-12, 1e-12)]
    public void CertifiedMomentsAreReached(
        string name,
        double mean,
        double deviation,
        double autocorrelation,
        double meanDigits,
        double deviationDigits,
        double lagDigits
    )
    {
        double[] values = StrdData.Univariate(name);
        Moments moments = Moments.Of(values);
        Digits.Relative(mean, moments.Mean, Math.Max(meanDigits, 1.2e-16));
        Digits.Relative(deviation, moments.StandardDeviation, deviationDigits);
        Digits.Relative(autocorrelation, Moments.LagOneAutocorrelation(values), lagDigits);
    }

    [Fact]
    public void VarianceWithAndWithoutBessel()
    {
        Moments moments = Moments.Of([2, 4, 4, 4, 5, 5, 7, 9]);
        Assert.Equal(4.0, moments.PopulationVariance);
        Digits.Relative(4.571428571428571, moments.Variance, 1e-15);
        Digits.Relative(Math.Sqrt(4.571428571428571 / 8), moments.MeanUncertainty, 1e-15);
    }

    [Fact]
    public void CompensatedSumKeepsWhatTheNaiveSumLoses() => Assert.Equal(2.0, Moments.Sum([1, 1e100, 1, -1e100]));

    [Fact]
    public void NoValuesHaveNoMean() => Assert.Throws<ArgumentException>(() => Moments.Of([]));
}
