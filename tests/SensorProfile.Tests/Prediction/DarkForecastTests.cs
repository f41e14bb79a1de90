using SensorProfile.Prediction;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Tests.Prediction;

/// <summary>The signal of single pixels against closed forms.</summary>
public sealed class DarkForecastTests
{
    private static readonly ForecastLaws laws = new()
    {
        Reference = -10,
        TypicalRate = 0.1,
        Typical = t => 0.1 * Math.Pow(2, (t + 10) / 6),
        Activation = t => 0.1 * Math.Pow(2, (t + 10) / 6),
        LawCorrelation = -0.5,
        PedestalShare = -0.01,
    };

    [Fact]
    public void AnOrdinaryPixelGrowsAsTheTypicalOne()
    {
        // 0.12 e-/px/s, 12 °C warmer: ×4, over 50 s: 24 e-. Variance: (4·50·0.002)² + (0.1·ln 4·0.02·4·50)² +
        // 2·4·50·(−0.01)·0.09, + 0.09 of the pedestal; never below the pedestal's alone.
        (double value, double variance) = new DarkForecast(laws, 2, 50).Predict(
            new PixelState(0.12, 0.002, false, double.NaN, double.NaN, 0),
            0.09
        );
        Assert.Equal(24, value, 1e-9);
        double noise =
            Math.Pow(4 * 50 * 0.002, 2) + Math.Pow(0.1 * Math.Log(4) * 0.02 * 4 * 50, 2) - 2 * 4 * 50 * 0.01 * 0.09;
        Assert.Equal(Math.Max(noise, 0) + 0.09, variance, 1e-9);
    }

    [Fact]
    public void AHotPixelGrowsAsItsOwnLaw()
    {
        // Doubles every 8 °C: over 12 °C ×2^1.5; u² = S²·(0.02² + (x·u_a)² + 2ρ·0.02·x·u_a), x = ln 4, a = 0.75, u_a =
        // 0.75·0.4/8.
        (double value, double variance) = new DarkForecast(laws, 2, 50).Predict(
            new PixelState(10, 0.2, true, 8, 0.4, 0),
            0
        );
        double signal = 500 * Math.Pow(2, 1.5),
            bent = Math.Log(4) * 0.75 * 0.05;
        Assert.Equal(signal, value, 1e-3);
        Assert.Equal(signal * signal * (0.02 * 0.02 + bent * bent - 0.02 * bent), variance, 1);
    }

    [Fact]
    public void AHotPixelWithoutALawFollowsItsClass()
    {
        var classed = laws with
        {
            Classes =
            [
                new DoublingByRate(5, 10, new Measurement(9, 0.1, "°C", 20, "test"), 0.5, 20),
                new DoublingByRate(10, 20, new Measurement(8, 0.1, "°C", 20, "test"), 0.5, 20),
            ],
        };
        (double value, _) = new DarkForecast(classed, 2, 1).Predict(
            new PixelState(30, 1, true, double.NaN, double.NaN, 0),
            0
        );
        Assert.Equal(30 * Math.Pow(2, 12 / 8.0), value, 1e-3);
        (value, double variance) = new DarkForecast(laws, 2, 1).Predict(
            new PixelState(30, 0, true, double.NaN, double.NaN, 0),
            0
        );
        // no class: the typical law, 15 % of activation in doubt
        Assert.Equal(120, value, 1e-6);
        Assert.Equal(120 * 0.15 * Math.Log(4), Math.Sqrt(variance), 1e-6);
    }

    [Fact]
    public void GlowGrowsByItsOwnLaw()
    {
        var glowing = laws with { Glow = new GlowGrowth(12, 0, 1, 1) };
        (double value, _) = new DarkForecast(glowing, 2, 100).Predict(
            new PixelState(0.5, 0, false, double.NaN, double.NaN, 0.4),
            0
        );
        Assert.Equal(0.1 * 4 * 100 + 0.4 * 2 * 100, value, 1e-9);
    }

    [Fact]
    public void GlowThatIsNotInProportionKeepsItsPower()
    {
        // G·t^0.5 through exposures 100, 400: a line of slope (20 − 10)/300 per unit G; a map of rate r stands for G =
        // r·30.
        GlowGrowth growth = GlowGrowth.Find(
            [new GlowRegion { ExposureExponent = new Measurement(0.5, 0.02, "1", 3, "test") }],
            [(100, 4), (400, 4)]
        );
        Assert.Equal(30 * Math.Sqrt(225), growth.EquivalentSeconds(225), 1e-9);
        GlowGrowth inProportion = GlowGrowth.Find(
            [new GlowRegion { ExposureExponent = new Measurement(1.1, 0.1, "1", 3, "test") }],
            [(100, 4), (400, 4)]
        );
        Assert.Equal(225, inProportion.EquivalentSeconds(225));
    }

    [Fact]
    public void APedestalOfFewFramesHasTheTypicalNoise()
    {
        Assert.Equal(4.0 / 5, PedestalDoubt.Variance(100, 4, 5));
        Assert.Equal(20.0 / 16, PedestalDoubt.Variance(20, 4, 16)); // jumps: its own
        Assert.Equal((16 * 4 + 15 * 10) / 31.0 / 16, PedestalDoubt.Variance(10, 4, 16), 1e-12);
    }
}
