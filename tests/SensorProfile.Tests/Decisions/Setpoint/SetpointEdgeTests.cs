using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Tests.Decisions.Setpoint;

/// <summary>Advice at the edges: air, cooler, measured range and glow.</summary>
public class SetpointEdgeTests
{
    private static readonly Tarn camera = new() { Relative = 0.001 };

    // was "Run at 13 °C" in air of −5 °C: a cooler does not heat
    [Fact]
    public void TheSetPointIsNeverWarmerThanTheAir()
    {
        SetpointAnswer answer = Ask(sky: 20, ambient: [-12.5], difference: 35);
        Assert.Equal(
            (-13, SetpointBound.Air, SetpointVerdict.Holds),
            (answer.At.Temperature, answer.Bound, answer.Verdict)
        );
        Assert.All(answer.Ambient, night => Assert.True(night.Sensor <= night.Ambient));
    }

    // darks of 33 to 36 °C were answered "Up to 24 °C … at most 5 %"
    [Fact]
    public void WhereTheDarksEndFirstTheColdestOfThemIsNamedWithItsCost()
    {
        SetpointAnswer answer = Ask(range: [33, 36]);
        Assert.Equal(
            (33.0, SetpointBound.ColdestMeasured, SetpointVerdict.Limited, SetpointLimit.Range),
            (answer.At.Temperature, answer.Bound, answer.Verdict, answer.Limit!.Value)
        );
        Assert.Equal(answer.Curve.Single(point => point.Temperature == 33), answer.At);
        // 0.006·2^(43/6) e-/px/s for 300 s beside 150 + 2.25 + 0.64/12 e-²
        double rest = 150 + 2.25 + 0.64 / 12;
        Assert.Equal(
            100 * (Math.Sqrt(1 + 0.006 * Math.Pow(2, 43 / 6.0) * 300 / rest) - 1),
            answer.At.ExtraTypical,
            1e-6
        );
        Assert.All(answer.Settling, darks => Assert.Equal(Math.Floor(answer.LawAsks!.Value), darks.Temperature));
        Assert.NotEmpty(answer.Settling);
    }

    // Against physical cameras answers colder than every dark were held in 68 of 100 where 95 were claimed.
    [Fact]
    public void EachDegreeOutsideTheDarksIsDoubted()
    {
        SetpointAnswer near = Ask(range: [-20, 10]),
            far = Ask(range: [15, 30]);
        (Measurement inside, Measurement outside) = (
            near.Quantities["setpointTypical"]!,
            far.Quantities["setpointTypical"]!
        );
        Assert.Equal(inside.Value, outside.Value, 0.3);
        Assert.InRange(outside.Value, 5, 14);
        Assert.True(outside.StandardUncertainty >= 0.08 * (15 - outside.Value));
        Assert.True(inside.StandardUncertainty < 0.08 * (15 - outside.Value));
        (double? low, double? high) = (far.Intervals["setpointTypical"].Low, far.Intervals["setpointTypical"].High);
        Assert.True(high - low >= 2 * 1.96 * 0.08 * (15 - outside.Value) - 1e-9);
    }

    [Fact]
    public void WhereTheAirIsFarBelowTheDarksThereIsNoSetPoint()
    {
        SetpointAnswer answer = Ask(range: [33, 36], ambient: [15], difference: 35);
        Assert.Null(answer.Quantities["setpoint"]);
        Assert.Equal((33.0, SetpointVerdict.CannotTell), (answer.At.Temperature, answer.Verdict));
        Assert.All(answer.Settling, darks => Assert.InRange(darks.Temperature!.Value, -17, 15));
    }

    [Fact]
    public void WhereTheLossIsKeptAtEveryMeasuredTemperatureTheWarmestIsAdvised()
    {
        SetpointAnswer answer = Ask(sky: 150);
        Assert.Equal(
            (5.0, SetpointBound.WarmestMeasured, SetpointVerdict.Holds),
            (answer.At.Temperature, answer.Bound, answer.Verdict)
        );
    }

    // a floor of 0.2 e-/px/s beside a sky of 0.5: √(1 + 60/152.3) − 1 = 18 %, whatever the temperature
    [Fact]
    public void AFloorThatExceedsTheLossAloneIsGlow()
    {
        SetpointAnswer answer = Ask(floor: 0.2);
        Assert.Equal((SetpointVerdict.Limited, SetpointLimit.Glow), (answer.Verdict, answer.Limit!.Value));
        Assert.Equal(100 * (Math.Sqrt(1 + 60 / (150 + 2.25 + 0.64 / 12)) - 1), answer.GlowExtra, 0.02);
        Assert.True(answer.GlowExtra > 5);
        Assert.Empty(answer.Settling); // more darks would not help
    }

    // air of 45 °C and a cooler of 35 °C gave "run at 13 °C … cooling does not help: this is glow" of a glow that
    // halves every 10 °C, and keeps the loss at 2 °C
    [Fact]
    public void GlowThatFallsWithTemperatureIsTheCoolersLimit()
    {
        Tarn glowing = new()
        {
            Relative = 0.001,
            Rate = 1e-4,
            HotFrom = 5e-4,
            Glow =
            [
                new SensorProfile.Profiles.Pattern.GlowRegion
                {
                    Where = "right edge",
                    Peak = camera.Of(0.03, "e-/px/s"),
                    DoublingTemperature = camera.Of(10, "°C"),
                },
            ],
        };
        ModeProfile mode = glowing.Mode();
        SetpointAnswer At(double air) =>
            SetpointAdvice.Find(
                glowing.Profile() with
                {
                    Modes = [mode],
                },
                mode,
                new SetpointQuestion
                {
                    ExposureSeconds = 300,
                    Sky = SkyRate.Given(0.02),
                    Ambient = [new AmbientTemperature("night", air)],
                    MaximumDifference = 35,
                }
            );
        SetpointAnswer hot = At(45);
        Assert.Equal((SetpointVerdict.Limited, SetpointLimit.Cooler), (hot.Verdict, hot.Limit!.Value));
        Assert.True(hot.GlowExtra < 5);
    }

    [Fact]
    public void TheLightThatKeepsTheLossIsWorkedOut()
    {
        SetpointAnswer limited = Ask(loss: 0.02, ambient: [22], difference: 25);
        Assert.Equal(SetpointLimit.Cooler, limited.Limit);
        double shorter = limited.ExposureWithinLoss!.Value;
        SetpointAnswer again = Ask(loss: 0.02, ambient: [22], difference: 25, exposure: shorter * 0.999);
        Assert.Equal(limited.At.Temperature, again.At.Temperature);
        Assert.Equal(SetpointVerdict.Holds, again.Verdict);
        Assert.Equal(
            SetpointVerdict.Limited,
            Ask(loss: 0.02, ambient: [22], difference: 25, exposure: shorter * 1.001).Verdict
        );
    }

    [Theory]
    [InlineData(33.42, 33.4)] // tenths where the darks are not at whole degrees
    [InlineData(-19.98, -20)] // probes differ by more than that
    public void TheEndOfTheDarksIsASettableTemperature(double coldest, double expected) =>
        Assert.Equal(expected, SetpointChoice.Measured(null, (coldest, coldest + 10)).Celsius, 1e-12);

    private static SetpointAnswer Ask(
        double sky = 0.5,
        double loss = 0.05,
        double exposure = 300,
        double[]? range = null,
        double[]? ambient = null,
        double? difference = null,
        double floor = 0
    )
    {
        ModeProfile mode = camera.Mode();
        DarkCurrentProfile dark = mode.DarkCurrent! with { MeasuredRange = range ?? [-20, 5] };
        if (floor > 0)
        {
            DarkCurrentModel law = dark.Models[0];
            dark = dark with
            {
                Selected = "doubling+floor",
                Models =
                [
                    law with
                    {
                        Name = "doubling+floor",
                        Parameters =
                        [
                            .. law.Parameters,
                            new ModelParameter("floor", floor, 0, "e-/px/s", 6, "true value"),
                        ],
                        Covariance =
                        [
                            [1e-12, 0, 0],
                            [0, 1e-12, 0],
                            [0, 0, 1e-12],
                        ],
                    },
                ],
            };
        }
        mode = mode with { DarkCurrent = dark };
        return SetpointAdvice.Find(
            camera.Profile() with
            {
                Modes = [mode],
            },
            mode,
            new SetpointQuestion
            {
                ExposureSeconds = exposure,
                Sky = SkyRate.Given(sky),
                Loss = loss,
                Ambient = [.. (ambient ?? []).Select(t => new AmbientTemperature("night", t))],
                MaximumDifference = difference,
            }
        );
    }
}
