using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using SensorProfile.DarkCurrent.Laws;

namespace SensorProfile.Tests.DarkCurrent;

/// <summary>
/// Simulated point sets of known truth: the intervals must hold it, and the choice among the laws must be sensible.
/// </summary>
/// <remarks>1000 sets each: a share of 95 % has a standard error of 0.7 %. The uncertainty includes the laws that the
/// points leave open, so it may only be
/// conservative (up to 99.5 %), and where a less simple law is true but not decided, its pull may cost 2 %; 92 % is 4
/// standard errors below 95.</remarks>
public class CoverageTests
{
    private const int Sets = 1000;
    private static readonly double[] Six = [-25, -20, -15, -10, -5, 0];

    private sealed record Outcome(
        double DoublingInside,
        double RateInside,
        double MeanZ,
        IReadOnlyDictionary<string, double> Selected
    );

    private static Outcome Simulate(
        string name,
        double[] parameters,
        double[] temperatures,
        double relative,
        double jitter,
        double stated
    )
    {
        TemperatureLaw law = TemperatureLaw.Named(name, -10);
        double rate = law.Rate(-10, parameters),
            doubling = law.Doubling(-10, parameters),
            sum = 0;
        var random = new Xoshiro256StarStar(20261, false);
        int doublings = 0,
            doublingInside = 0,
            rateInside = 0;
        var selected = new Dictionary<string, double>();
        for (int set = 0; set < Sets; set++)
        {
            TemperaturePoint[] points =
            [
                .. temperatures.Select(t =>
                {
                    double expected = law.Rate(t + jitter * Normal.Sample(random, 0, 1), parameters),
                        u = Math.Sqrt(Math.Pow(relative * expected, 2) + 0.0003 * 0.0003);
                    return new TemperaturePoint(t, expected + u * Normal.Sample(random, 0, 1), u, stated);
                }),
            ];
            TemperatureFitResult fit = TemperatureFit.Fit(points, -10);
            if (fit.DoublingTemperature is { } d)
            {
                double z = (d.Value - doubling) / d.StandardUncertainty;
                sum += z;
                doublings++;
                if (Math.Abs(z) < 1.96)
                    doublingInside++;
            }
            if (fit.RateAtReference is { } r && Math.Abs(r.Value - rate) < 1.96 * r.StandardUncertainty)
                rateInside++;
            selected[fit.Selected ?? "none"] = selected.GetValueOrDefault(fit.Selected ?? "none") + 1.0 / Sets;
        }
        Assert.InRange(doublings, 0.99 * Sets, Sets);
        return new Outcome(doublingInside / (double)doublings, rateInside / (double)Sets, sum / doublings, selected);
    }

    [Theory]
    [InlineData("doubling", new[] { 0.06, 5.0 })]
    [InlineData("doubling", new[] { 0.06, 6.5 })]
    [InlineData("doubling", new[] { 0.06, 8.0 })]
    [InlineData("arrhenius", new[] { 0.06, 0.62 })]
    [InlineData("two-process", new[] { 0.03, 0.03 })]
    [InlineData("doubling+floor", new[] { 0.05, 6, 0.005 })]
    public void IntervalsHoldTheTruth(string name, double[] parameters)
    {
        Outcome outcome = Simulate(name, parameters, Six, 0.03, 0, 0);
        Assert.InRange(outcome.DoublingInside, 0.92, 0.995);
        Assert.InRange(outcome.RateInside, 0.92, 0.995);
        // no bias: 4 standard errors of a mean of 1000
        if (name == "doubling")
            Assert.InRange(outcome.MeanZ, -0.13, 0.13);
    }

    [Fact]
    public void TheSimplestLawIsKeptWhenItIsTrue() =>
        Assert.True(Simulate("doubling", [0.06, 5.5], Six, 0.03, 0, 0).Selected["doubling"] > 0.97);

    [Theory]
    [InlineData("arrhenius", new[] { 0.06, 0.62 })]
    [InlineData("two-process", new[] { 0.03, 0.03 })]
    [InlineData("doubling+floor", new[] { 0.05, 6, 0.005 })]
    public void PreciseRatesShowTheTrueLaw(string name, double[] parameters) =>
        Assert.True(Simulate(name, parameters, Six, 0.002, 0, 0).Selected[name] > 0.95);

    // A probe wrong by 0.1 °C matters far more than rates known to 0.2 %: stated, it is in the intervals; unstated, its
    // scatter is found, though
    // from four degrees of freedom only.
    [Fact]
    public void TemperatureErrorsAreInTheIntervals()
    {
        Outcome stated = Simulate("doubling", [0.06, 6], Six, 0.002, 0.1, 0.1),
            unstated = Simulate("doubling", [0.06, 6], Six, 0.002, 0.1, 0);
        Assert.InRange(stated.DoublingInside, 0.93, 0.999);
        Assert.InRange(stated.RateInside, 0.93, 0.999);
        Assert.InRange(unstated.DoublingInside, 0.89, 0.99);
        Assert.InRange(unstated.RateInside, 0.86, 0.99);
    }

    [Fact]
    public void ThreeTemperaturesStillGiveHonestIntervals()
    {
        Outcome outcome = Simulate("doubling", [0.06, 6], [-20, -10, 0], 0.02, 0, 0);
        Assert.InRange(outcome.DoublingInside, 0.92, 0.999);
        Assert.InRange(outcome.RateInside, 0.92, 0.999);
    }
}
