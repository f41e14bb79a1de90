using SensorProfile.Fitting.Models;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.Tests.Pixels;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.DarkRates;

/// <summary>Temperature laws of single pixels from noisy rates of known truth.</summary>
public sealed class PixelLawTests(ITestOutputHelper output)
{
    private const double Doubling = 6,
        Reference = -10;
    private static readonly double[] celsius = [-20, -15, -10, -5, 0];

    // What happened: a line through logarithms, weighted by the measured rates, gave faint hot pixels a law 2 to 5 % too slow.
    [Theory, InlineData(0.008), InlineData(0.016)]
    public void AFaintPixelsLawIsNotTooSlow(double noise)
    {
        var law = new PixelLaw(
            celsius,
            Reference,
            t => 0.02 * Math.Pow(2, (t - Reference) / 6.5),
            [.. celsius.Select(_ => 100.0)],
            LawBend.None
        );
        var random = new NormalNoise(3);
        double[] uncertainties = [.. celsius.Select(_ => noise)];
        double[] doublings =
        [
            .. Enumerable
                .Range(0, 4000)
                .Select(_ =>
                    law.Fit(
                        true,
                        [.. celsius.Select(t => 0.1 * Math.Pow(2, (t - Reference) / Doubling) + noise * random.Next())],
                        uncertainties
                    )
                )
                .Where(fit => fit is not null)
                .Select(fit => fit!.Value.Doubling),
        ];
        double median = doublings.Order().ElementAt(doublings.Length / 2),
            error = 1.2533 * Deviation(doublings) / Math.Sqrt(doublings.Length);
        output.WriteLine($"{median:F3} ± {error:F3} of {doublings.Length}, truth {Doubling}");
        Assert.True(doublings.Length > 3900);
        Assert.Equal(Doubling, median, 3 * error + 0.002 * Doubling);
    }

    [Fact]
    public void ExactRatesGiveTheirLaw()
    {
        var law = new PixelLaw(celsius, Reference, null, [.. celsius.Select(_ => 100.0)], LawBend.None);
        double Rate(double t) =>
            0.5
            * Math.Exp(
                -0.6 / PhysicalConstants.BoltzmannElectronVoltsPerKelvin * (1 / (t + 273.15) - 1 / (Reference + 273.15))
            );
        var fit = law.Fit(true, [.. celsius.Select(Rate)], [.. celsius.Select(_ => 0.001)])!.Value;
        Assert.Equal(Math.Log(0.5), fit.LogRate, 1e-9);
        // Arrhenius: ln 2·k·T²/E at −10 °C
        Assert.Equal(
            Math.Log(2) * PhysicalConstants.BoltzmannElectronVoltsPerKelvin * 263.15 * 263.15 / 0.6,
            fit.Doubling,
            1e-4
        );
    }

    private static double Deviation(double[] values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
    }
}
