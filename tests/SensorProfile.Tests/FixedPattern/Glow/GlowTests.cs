using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Glow;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Truth;
using Xunit.Abstractions;
using SimulatedGlow = SensorProfile.Simulation.Parameters.Sensor.Glow;

namespace SensorProfile.Tests.FixedPattern.Glow;

/// <summary>Glow: found where it is, with its size and laws, and not invented.</summary>
public sealed class GlowTests(ITestOutputHelper output)
{
    private static CameraDescription Camera(params Shot[] shots) =>
        PatternNight.Camera(shots) with
        {
            Width = 320,
            Height = 240,
            DarkNonuniformity = 0.2,
            HotPixels = new HotPixels
            {
                Share = 0.003,
                Distribution = new() { Minimum = 0.5, Maximum = 20 },
            },
        };

    [Theory, InlineData(GlowShape.RightEdge, 1, "right edge"), InlineData(GlowShape.Corner, 0.7, "upper right corner")]
    public void AGlowIsRecovered(GlowShape shape, double exponent, string where)
    {
        var glow = new SimulatedGlow
        {
            Shape = shape,
            Rate = 0.4,
            Width = 25,
            Length = 60,
            X = 320,
            Y = shape == GlowShape.Corner ? 1 : 120,
            DoublingTemperature = 11,
            ExposureExponent = exponent,
            ReferenceExposure = 300,
        };
        var night = new PatternNight(Camera(PatternNight.Shots(4, -20, -10, 0)) with { Glow = [glow] });
        GlowRegion found = Assert.Single(night.Measure().Profile.Glow);
        TrueGlow truth = night.Truth.Glow[0];
        output.WriteLine(
            $"peak {found.Peak!.Value:0.000} ± {found.Peak.StandardUncertainty:0.000} truth {truth.Peak:0.000}; "
                + $"total {found.Total!.Value:0} ± {found.Total.StandardUncertainty:0} truth {truth.Total:0}; p "
                + $"{found.ExposureExponent?.Value:0.00} ± {found.ExposureExponent?.StandardUncertainty:0.00}; doubling "
                + $"{found.DoublingTemperature?.Value:0.00} ± {found.DoublingTemperature?.StandardUncertainty:0.00}"
        );
        Assert.Equal(where, found.Where);
        Assert.InRange(Math.Abs(found.X - truth.X), 0, 4);
        if (exponent == 1) // otherwise "rate" depends on the exposure
        {
            Assert.InRange((found.Peak!.Value - truth.Peak) / found.Peak.StandardUncertainty, -3, 3);
            Assert.InRange((found.Total!.Value - truth.Total) / found.Total.StandardUncertainty, -3, 3);
            Assert.InRange(found.Total.Value / truth.Total, 0.93, 1.05);
        }
        Assert.InRange((found.ExposureExponent!.Value - exponent) / found.ExposureExponent.StandardUncertainty, -3, 3);
        Assert.InRange(found.ExposureExponent.StandardUncertainty, 0, 0.1);
        Assert.InRange((found.DoublingTemperature!.Value - 11) / found.DoublingTemperature.StandardUncertainty, -3, 3);
        Assert.InRange(found.DoublingTemperature.StandardUncertainty, 0, 0.5);
    }

    [Theory, InlineData(0.5), InlineData(0.13)]
    public void AGlowOverMostOfTheSensorIsMeasuredFromItsDarkestQuarter(double rate)
    {
        // Falls to 1/e in 110 px: half of the sensor lies within 221 px of the corner (π/4·221² = 320·240/2) and has
        // more than e^−2 = 13 % of the peak. The dark rate is 0.05 e-/px/s.
        var night = new PatternNight(
            Camera(PatternNight.Shots(6, -20, -10, 0)) with
            {
                Glow =
                [
                    new SimulatedGlow
                    {
                        Shape = GlowShape.Corner,
                        Rate = rate,
                        Width = 110,
                        X = 320,
                        Y = 240,
                        DoublingTemperature = 6.5,
                    },
                ],
            }
        );
        GlowRegion found = night.Measure().Profile.Glow[0];
        output.WriteLine(
            $"peak {found.Peak!.Value:0.000} ± {found.Peak.StandardUncertainty:0.000} truth {rate}; doubling "
                + $"{found.DoublingTemperature?.Value:0.00} ± {found.DoublingTemperature?.StandardUncertainty:0.00}"
        );
        Assert.Equal("lower right corner", found.Where);
        Assert.InRange((found.Peak.Value - rate) / found.Peak.StandardUncertainty, -3, 3);
        Assert.InRange(found.Peak.StandardUncertainty / rate, 0, 0.25);
    }

    [Theory, InlineData(GlowShape.Blob, 0.05, 200), InlineData(GlowShape.Corner, 0.06, 150)]
    public void UnevennessOverTheWholeSensorIsNoGlow(GlowShape shape, double rate, double width)
    {
        // Up to 0.4 of the dark rate of 0.145 e-/px/s at 0 °C, brightest in the middle, as if seen through a lens, or
        // towards a corner; the noise of a cell is a hundredth of that.
        var glow = new SimulatedGlow
        {
            Shape = shape,
            Rate = rate,
            Width = width,
            X = shape == GlowShape.Blob ? 160 : 320,
            Y = shape == GlowShape.Blob ? 120 : 240,
        };
        var night = new PatternNight(
            Camera(PatternNight.Shots(8, 0)) with
            {
                HotPixels = new HotPixels(),
                DarkNonuniformity = 0,
                Glow = [glow],
            }
        );
        Assert.Empty(night.Measure(reference: 0).Profile.Glow);
    }

    [Fact]
    public void NoGlowIsInventedAndHotPixelsAreNone()
    {
        for (ulong seed = 1; seed <= 4; seed++)
            Assert.Empty(new PatternNight(Camera(PatternNight.Shots(3, -10)), seed).Measure().Profile.Glow);
    }

    [Fact]
    public void AGradientIsNoGlow()
    {
        var night = new PatternNight(PatternNight.Camera(PatternNight.Shots(2, -10)));
        PatternInput input = night.Input();
        PatternResult result = PatternMeasurement.Measure(input, null)!;
        float[] tilted = [.. result.Maps.Rate.Select((r, i) => r + 0.0002f * (i % 160) + 0.0001f * (i / 160))];
        Assert.Null(GlowSearch.Find(input, result.Maps with { Rate = tilted }, result.Defects));
    }

    [
        Theory,
        InlineData(0, 0, "upper left corner"),
        InlineData(50, 99, "lower edge"),
        InlineData(50, 50, "middle"),
        InlineData(99, 50, "right edge")
    ]
    public void PlacesHaveWords(int column, int row, string words) =>
        Assert.Equal(words, GlowPlace.Words(column, row, 100, 100));
}
