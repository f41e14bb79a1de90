using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting.Statistics;

/// <summary>
/// Exact Poisson limits (Gehrels 1986, ApJ 303, 336; digits by scipy).
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

    private static void Equal((double Low, double High) expected, (double Low, double High) actual, double halfUnit)
    {
        Digits.Printed(expected.Low, actual.Low, halfUnit);
        Digits.Printed(expected.High, actual.High, halfUnit);
    }
}
