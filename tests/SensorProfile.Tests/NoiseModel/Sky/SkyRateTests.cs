using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Tests.NoiseModel.Sky;

public class SkyRateTests
{
    // by hand: 3631 Jy/h = 5.4798e10 photons/s/m² per ln λ; 10^-8.6; 300/550; (π/4)·(3.76e-6/5·206264.806)²; 0.5
    [Fact]
    public void DarkSkyFromItsAssumptions()
    {
        double side = 3.76e-6 / 5 * 206264.80624709636;
        double expected =
            3631e-26 / 6.62607015e-34 * Math.Pow(10, -8.6) * (300.0 / 550) * Math.PI / 4 * side * side * 0.5;
        Assert.Equal(expected, NamedSkies.Dark.Rate.Value, 1e-12);
        Assert.Equal(0.71, NamedSkies.Dark.Rate.Value, 0.005);
        Assert.Equal(4.48, NamedSkies.Suburban.Rate.Value, 0.005);
        Assert.Equal(0.0875, NamedSkies.NarrowBand.Rate.Value, 5e-5);
    }

    [Fact]
    public void FiveMagnitudesAreAFactorOfAHundred()
    {
        var bright = new SkyBrightness
        {
            Magnitude = 17,
            FocalRatio = 4,
            PixelMicrometres = 3.76,
        };
        Assert.Equal(100, bright.Estimate().Rate.Value / (bright with { Magnitude = 22 }).Estimate().Rate.Value, 1e-9);
        Assert.Equal(4, bright.Estimate().Rate.Value / (bright with { FocalRatio = 8 }).Estimate().Rate.Value, 1e-9);
    }

    [Fact]
    public void FromTheBackgroundOfLights()
    {
        SkyRate sky = SkyRate.FromBackground(
            new Measurement(200, 4, "ADU", 1000, "m"),
            new Measurement(0.8, 0.008, "e-/ADU", 6, "m"),
            300
        );
        Assert.Equal(200 * 0.8 / 300, sky.Rate.Value, 1e-12);
        Assert.Equal(sky.Rate.Value * Math.Sqrt(0.02 * 0.02 + 0.01 * 0.01), sky.Rate.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void ABackgroundInTheNoiseIsNoSky()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() =>
            SkyRate.FromBackground(
                new Measurement(3, 2, "ADU", 1000, "m"),
                new Measurement(0.8, 0.008, "e-/ADU", 6, "m"),
                300
            )
        );
        Assert.Equal(RefusalKind.CannotTell, refused.Kind);
        Assert.Equal(
            "The background of the lights is 3 ± 2 ADU above the dark, which is not above zero: use darks that "
                + "match the lights, or give the sky as a number.",
            refused.Message
        );
    }

    [Theory]
    [InlineData(0, 5, "A sky brightness of 0 mag/arcsec² is not between 0 and 30.")]
    [InlineData(21, 0, "The focal ratio must be a number above 0 (such as 5 for f/5), not 0.")]
    public void BadOptics(double magnitude, double ratio, string message)
    {
        var refused = Assert.Throws<DecisionRefusedException>(() =>
            new SkyBrightness
            {
                Magnitude = magnitude,
                FocalRatio = ratio,
                PixelMicrometres = 3.76,
            }.Estimate()
        );
        Assert.Equal(message, refused.Message);
    }
}
