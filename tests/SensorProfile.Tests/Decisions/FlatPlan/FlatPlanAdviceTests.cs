using SensorProfile.Decisions.FlatPlan;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;

namespace SensorProfile.Tests.Decisions.FlatPlan;

public class FlatPlanAdviceTests
{
    private static readonly Tarn camera = new();

    // by hand: S = 1350 e-, V = 1350 + 1.8 + 2.25 + 0.0533, F = 25000 e-, 20 flats and 20 dark flats of 2.3033 e-² each
    [Fact] // 40 × 300 s at 4.5 e-/px/s, half-full flats
    public void AgreesWithTheFormulaByHand()
    {
        FlatPlanAnswer answer = Ask(q => q with { Level = 0.5, DitherPositions = 1 });
        double master = (25_000 + 2 * 2.303333) / 20 / (25_000.0 * 25_000),
            loss = Math.Sqrt(1 + 40 * 1350 * 1350.0 * master / 1354.103333) - 1;
        Assert.Equal(100 * loss, answer.Quantities["lossAt20Flats"]!.Value, 1e-6);
        Assert.Equal(0.0525, loss, 0.0005);
        Assert.Equal((int)Math.Ceiling(20 * (Math.Pow(1 + loss, 2) - 1) / (1.05 * 1.05 - 1)), answer.Flats);
    }

    [Fact]
    public void TheLevelLeavesRoomForTheBrightestPixels()
    {
        FlatPlanAnswer answer = Ask();
        // 0.95·(1 − 0.3/3)/1.2 = 71 % of the well without nonuniformity, in steps of 5 %
        Assert.Equal(0.7, answer.Level.Share);
        Assert.Equal(FlatLevelLimit.Saturation, answer.LevelLimit);
        FlatPlanAnswer coloured = Ask(mode: Flats(camera.Mode(), _ => 0, 1, 1.5, 1));
        // the brightest colour has 1.5/1.1667 of the mean
        Assert.Equal(0.55, coloured.Level.Share);
        Assert.DoesNotContain(coloured.Findings, f => f.Code == "flat-level-untested");
    }

    [Fact]
    public void ABentResponseLowersTheLevel()
    {
        // bends from 60 % on, by 3 % at saturation; a stack of 40 × 1350 e- sees 0.22 % of the sky as half of its noise,
        // which the centre, at 1/0.9 of the mean, reaches where the mean is 56 %
        FlatPlanAnswer bent = Ask(mode: Flats(camera.Mode(), share => share < 0.6 ? 0 : 7.5 * (share - 0.6), 1));
        Assert.Equal(FlatLevelLimit.Linearity, bent.LevelLimit);
        Assert.Equal(0.55, bent.Level.Share);
        Assert.Contains(bent.Levels, l => l is { Straight: false, Share: > 0.55 });
        Assert.DoesNotContain(bent.Findings, f => f.Code == "flat-level-bent");
        // where every level bends the straightest one of some brightness is taken, and it is said
        FlatPlanAnswer all = Ask(mode: Flats(camera.Mode(), share => 10 * share, 1));
        Assert.Equal(0.3, all.Level.Share);
        Assert.Contains(all.Findings, f => f.Code == "flat-level-bent");
    }

    [Fact]
    public void WhatFlatsLeaveMayLeaveNoNumber()
    {
        ModeProfile mode = camera.Mode() with { FlatResidual = camera.Of(0.2, "%") };
        FlatPlanAnswer still = Ask(q => q with { DitherPositions = 1 }, mode),
            dithered = Ask(q => q with { DitherPositions = 20 }, mode);
        Assert.Equal(FlatPlanVerdict.Limited, still.Verdict);
        Assert.Null(still.Level.Flats);
        Assert.True(still.Quantities["lossByPattern"]!.Value > 5);
        Assert.Equal(Ask(q => q with { DitherPositions = 1 }).Flats, still.Flats);
        Assert.Equal(FlatPlanVerdict.Answered, dithered.Verdict);
    }

    [Fact]
    public void AGradientThatFlatsLeaveIsSaid()
    {
        ModeProfile mode = camera.Mode() with
        {
            FlatResidual = camera.Of(0.001, "%"),
            FlatResidualOverAreas = camera.Of(0.4, "%"),
        };
        FlatPlanAnswer answer = Ask(mode: mode);
        // 0.4 % of 1350 e- over √(1354.1/40)
        Assert.Equal(0.004 * 1350 / Math.Sqrt(1354.103333 / 40), answer.Quantities["gradientLeft"]!.Value, 1e-6);
        Assert.Contains(answer.Findings, f => f.Code == "flat-gradient-left");
    }

    [Fact]
    public void TheMoreLightTheMoreFlats()
    {
        int[] flats = [.. new[] { 0.09, 0.7, 4.5, 20 }.Select(s => Ask(q => q with { Sky = SkyRate.Given(s) }).Flats)];
        Assert.Equal(flats.Order(), flats);
        Assert.Equal(5, flats[0]);
        Assert.Contains(Ask(q => q with { Sky = SkyRate.Given(20) }).Findings, f =>
            f.Code == "more-flats-than-practical"
        );
    }

    [Fact]
    public void DitheringIsComparedWhereItWasNotSaid()
    {
        FlatPlanAnswer answer = Ask();
        Assert.Equal(20, answer.Dithered!.Stack.DitherPositions);
        Assert.Equal(Ask(q => q with { DitherPositions = 20 }).Flats, answer.Dithered.Flats);
        Assert.Null(Ask(q => q with { DitherPositions = 1 }).Dithered);
    }

    [Fact] // an answer for who has no darks
    public void WithoutDarkCurrentItIsAnsweredOnTheStrictSide()
    {
        FlatPlanAnswer without = Ask(mode: camera.Mode() with { DarkCurrent = null, FixedPattern = null });
        Assert.Contains(without.Findings, f => f.Code == "dark-noise-not-counted");
        Assert.True(without.Flats >= Ask().Flats);
    }

    [Fact]
    public void WithoutFullWellTheBrightestFlatsSetTheLevel()
    {
        ModeProfile mode = Flats(camera.Mode(), _ => 0, 1) with { FullWell = null };
        FlatPlanAnswer answer = Ask(mode: mode);
        Assert.Equal(FlatLevelLimit.BrightestMeasured, answer.LevelLimit);
        Assert.Null(answer.Level.Share);
        Assert.Equal(0.95 * 50_000, answer.Level.Electrons, 1);
        Assert.Equal("full-well-missing", Code(() => Ask(mode: camera.Mode() with { FullWell = null })));
    }

    [Fact]
    public void TheIntervalHoldsTheDoubtOfSkyAndWell()
    {
        FlatPlanAnswer answer = Ask(q => q with { Sky = SkyRate.Given(20, 2), DitherPositions = 1 });
        Measurement flats = answer.Quantities["flats"]!;
        // n ∝ S/F: 10 % of the sky and 2 % of the well
        Assert.Equal(Math.Sqrt(0.1 * 0.1 + 0.02 * 0.02), flats.StandardUncertainty / flats.Value, 0.015);
        Assert.InRange(flats.Value, answer.Intervals["flats"].Low!.Value, answer.Intervals["flats"].High!.Value);
    }

    [Fact]
    public void WrongQuestionsAreRefused()
    {
        Assert.Equal("flat-level-out-of-range", Code(() => Ask(q => q with { Level = 0 })));
        Assert.Equal("flat-level-out-of-range", Code(() => Ask(q => q with { Level = 1.2 })));
        Assert.Equal("unlit-frames-not-positive", Code(() => Ask(q => q with { UnlitFrames = 0 })));
        Assert.Equal("lights-not-positive", Code(() => Ask(q => q with { Lights = 0 })));
        Assert.Equal("gain-missing", Code(() => Ask(mode: camera.Mode() with { Gain = null })));
        Assert.Equal("read-noise-missing", Code(() => Ask(mode: camera.Mode() with { ReadNoise = null })));
    }

    private static string Code(Action ask) => Assert.Throws<DecisionRefusedException>(ask).Code;

    private static FlatPlanAnswer Ask(Func<FlatPlanQuestion, FlatPlanQuestion>? change = null, ModeProfile? mode = null)
    {
        var question = new FlatPlanQuestion
        {
            ExposureSeconds = 300,
            Lights = 40,
            TemperatureCelsius = -10,
            Sky = SkyRate.Given(4.5),
        };
        return FlatPlanAdvice.Find(camera.Profile(), mode ?? camera.Mode(), change?.Invoke(question) ?? question);
    }

    /// <summary>Flats at 5 % to 95 % of the well; the departure from a straight line in %, one curve a colour.</summary>
    private static ModeProfile Flats(ModeProfile mode, Func<double, double> deviation, params double[] colours)
    {
        double brightest = colours.Max();
        return mode with
        {
            PhotonTransfer = new PhotonTransferProfile
            {
                Curves =
                [
                    .. colours.Select(
                        (colour, c) =>
                            new PhotonTransferCurve
                            {
                                Channel = $"P{c:00}",
                                Points =
                                [
                                    .. Enumerable
                                        .Range(1, 19)
                                        .Select(i => new PhotonTransferPoint
                                        {
                                            Exposure = i,
                                            Signal = 0.05 * i * 62_500 * colour / brightest,
                                            LinearityDeviation = deviation(0.05 * i),
                                        }),
                                ],
                            }
                    ),
                ],
            },
        };
    }
}
