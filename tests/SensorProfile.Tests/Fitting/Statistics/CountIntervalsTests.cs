using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting.Statistics;

/// <summary>
/// Exact Poisson limits (Gehrels 1986, ApJ 303, 336; scipy), Clopper–Pearson (scipy) and Wilson (astropy).
/// </summary>
public class CountIntervalsTests
{
    [Theory]
    [InlineData(0, 0, 3.688879454)]
    [InlineData(1, 0.025317808, 5.571643391)]
    [InlineData(2, 0.242209279, 7.224687668)]
    [InlineData(5, 1.623486390, 11.668332079)]
    [InlineData(10, 4.795388696, 18.390356042)]
    [InlineData(100, 81.363991251, 121.626793792)]
    public void ExactPoisson(long count, double low, double high) =>
        Equal((low, high), CountIntervals.Poisson(count), 5e-10);

    [Theory]
    [InlineData(0, 0, 1.841021645)]
    [InlineData(1, 0.172753779, 3.299526559)]
    [InlineData(2, 0.708185440, 4.637859623)]
    [InlineData(10, 6.891305561, 14.266949761)]
    public void OneSigmaPoisson(long count, double low, double high) =>
        Equal((low, high), CountIntervals.PoissonOneSigma(count), 5e-10);

    [Theory]
    [InlineData(0, 10, 0, 0.3084971078)]
    [InlineData(3, 1000, 0.0006190999, 0.0087420232)]
    [InlineData(12, 40, 0.1656272044, 0.4653162853)]
    public void ExactShare(long k, long n, double low, double high) =>
        Equal((low, high), CountIntervals.ClopperPearson(k, n), 5e-11);

    [Theory]
    [InlineData(0, 10, 0, 0.2775327999)]
    [InlineData(3, 1000, 0.0010207839, 0.0087830141)]
    [InlineData(12, 40, 0.1807484523, 0.4543001882)]
    public void ScoreShare(long k, long n, double low, double high) =>
        Equal((low, high), CountIntervals.Wilson(k, n), 5e-11);

    [Fact]
    public void AllOrNothingStaysWithinTheUnitInterval()
    {
        Assert.Equal(1, CountIntervals.ClopperPearson(10, 10).High);
        Assert.Equal(1, CountIntervals.Wilson(10, 10).High);
    }

    private static void Equal((double Low, double High) expected, (double Low, double High) actual, double halfUnit)
    {
        Digits.Printed(expected.Low, actual.Low, halfUnit);
        Digits.Printed(expected.High, actual.High, halfUnit);
    }
}
