using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.Settling;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Tests.Decisions.Settling;

/// <summary>Answers that cannot be told name the frames that would settle them.</summary>
public class SettlingTests
{
    private static readonly SkyRate sky = SkyRate.Given(0.5);

    // 20 lights at 5 °C: level residual 0.3·10.2 e⁻·(2^(4.2/6) − 1) = 1.9 e⁻ against half the stack's noise, 1.42 e⁻:
    // 1.34 times the limit, and a profile known to 20 %
    private static readonly FrameSet lights = Sets.Of(FrameKind.Light, 20, 300, 5),
        darks = Sets.Of(FrameKind.Dark, 60, 300, 9.2);

    [Fact]
    public void DarksThatMayOrMayNotFitSayHowManyMoreOfTheProfileSettleIt()
    {
        LightMatch match = Match(new Tarn { Relative = 0.2, HotShare = 0 }).Matches[0];
        Assert.Equal(MatchVerdict.CannotTell, match.Verdict);
        Assert.All(match.Settling, s => Assert.Equal(FrameKind.Dark, s.Kind));
        Assert.Equal(SettlingOutcome.MoreFrames, match.Reason.Settled);
        // 4 darks of 5 exposures at 6 temperatures stand behind the profile: with q times as many, its uncertainties
        // are 1/√q and the answer can be told; with half of that addition it cannot
        double q = 1 + match.Settling.Sum(s => s.Frames) / 120.0;
        Assert.NotEqual(MatchVerdict.CannotTell, Match(new Tarn { Relative = 0.2 / Math.Sqrt(q), HotShare = 0 }).Worst);
        Assert.Equal(
            MatchVerdict.CannotTell,
            Match(new Tarn { Relative = 0.2 / Math.Sqrt(1 + (q - 1) / 3), HotShare = 0 }).Worst
        );
    }

    [Fact]
    public void TheQuickestFramesThatSettleItAreNamed()
    {
        SettlingSearch bias = Find(left => left.Bias < 0.6); // 1/√3 = 0.58: 3 times 8 bias frames
        Assert.Equal([new SettlingFrames(FrameKind.Bias, null, null, 16, 32)], bias.Frames);
        Assert.Equal(SettlingOutcome.MoreFrames, bias.Outcome);
        Assert.Equal(
            [FrameKind.Bias, FrameKind.Flat],
            Find(left => left is { Bias: < 0.9, Flats: < 0.9 }).Frames.Select(f => f.Kind)
        );
        Assert.Equal(60, Find(left => left.Darks < 0.9).Frames.Sum(f => f.Frames)); // half of 120 once more
    }

    [Fact]
    public void WhatNoFramesReduceIsSaid()
    {
        Assert.Equal(SettlingOutcome.CountOfHotPixels, Find(_ => false).Outcome);
        Assert.Equal(SettlingOutcome.TooManyFrames, Find(left => left.Darks < 0.1).Outcome);
        Assert.Empty(Find(left => left.Darks < 0.1).Frames);
    }

    [Fact] // a sky that was given exactly is not doubted; one that was measured on lights is
    public void LightsAreNamedOnlyWhereTheSkyIsUncertain()
    {
        Assert.Empty(Find(left => left.Lights < 0.9).Frames);
        var measured = new SkyRate("your sky", new Measurement(0.5, 0.2, "e-/px/s", 10, "lights"), []);
        Assert.Equal(
            FrameKind.Light,
            Assert
                .Single(
                    SettlingSearch
                        .Find(new Tarn().Profile(), Reader(new Tarn()), measured, left => left.Lights < 0.9)
                        .Frames
                )
                .Kind
        );
    }

    [Fact]
    public void AToleranceThatIsNotKnownNamesFrames()
    {
        ToleranceAnswer answer = Tolerance(new Tarn { Relative = 0.7, HotShare = 0 });
        Assert.Equal(ToleranceVerdict.CannotTell, answer.Verdict);
        Assert.NotEmpty(answer.Settling);
        Assert.Equal(SettlingOutcome.MoreFrames, answer.Settled);
        double q = 1 + answer.Settling.Where(s => s.Kind == FrameKind.Dark).Sum(s => s.Frames) / 120.0;
        Assert.Equal(
            ToleranceVerdict.Answered,
            Tolerance(new Tarn { Relative = 0.7 / Math.Sqrt(q), HotShare = 0 }).Verdict
        );
    }

    [Fact]
    public void AProfileWithoutTheSpreadOverPixelsAsksForEightDarks()
    {
        ToleranceAnswer answer = Tolerance(new Tarn { Distribution = false });
        Assert.Equal(new SettlingFrames(FrameKind.Dark, 300, -10, 8, 8 * 302), Assert.Single(answer.Settling));
        LightMatch match = Match(new Tarn { Distribution = false }).Matches[0];
        Assert.Equal((FrameKind.Dark, 8), (match.Settling.Single().Kind, match.Settling.Single().Frames));
    }

    [Fact]
    public void WithoutAProfileTheFramesOfAFirstOneAreNamed()
    {
        LightMatch match = DarkMatching.Find(null, Question(lights, darks)).Matches[0];
        Assert.Equal([FrameKind.Bias, FrameKind.Flat, FrameKind.Dark], match.Settling.Select(s => s.Kind).Distinct());
        // what they name is a session that lacks nothing
        Inventory taken = Sets.Inventory([
            .. match
                .Settling.Where(s => s.Kind != FrameKind.Flat)
                .Select(s => Sets.Of(s.Kind, s.Frames, s.Exposure ?? 0, s.Temperature ?? 5)),
            .. Enumerable
                .Range(1, match.Settling.Single(s => s.Kind == FrameKind.Flat).Frames / 2)
                .Select(i => Sets.Of(FrameKind.Flat, 2, i, 5)),
        ]);
        Assert.Empty(MissingMeasurements.Find(taken));
    }

    [Fact]
    public void LightsOutOfReachAskForDarksThere()
    {
        LightMatch match = DarkMatching
            .Find(new Tarn().Profile(), Question(Sets.Of(FrameKind.Light, 20, 300, 22), darks))
            .Matches[0];
        Assert.Equal(MatchVerdict.CannotTell, match.Verdict);
        Assert.Equal(
            [(30.0, 22.0, 4), (100, 22, 4), (300, 22, 4)],
            match.Settling.Select(s => (s.Exposure!.Value, s.Temperature!.Value, s.Frames))
        );
        Assert.Equal(MatchGround.OutOfReach, match.Reason.Ground);
        Assert.Equal("temperature-outside-profile", match.Reason.Refusal!.Code);
    }

    [Fact]
    public void EveryPairIsJudgedAndLightsBeyondTheToleranceAreCounted()
    {
        FrameSet drifting = Sets.Of(FrameKind.Light, 21, 300, -10, drift: 6);
        MatchAnswer answer = DarkMatching.Find(
            new Tarn().Profile(),
            new MatchQuestion
            {
                Lights = [drifting, lights],
                Darks = [Sets.Of(FrameKind.Dark, 60, 300, -10), darks, Sets.Of(FrameKind.Dark, 60, 300, 5, gain: 0)],
                Stack = new StackDescription { Sky = sky },
            }
        );
        Assert.Equal(6, answer.Pairs.Count);
        Assert.Equal(2, answer.Pairs.Count(p => p.Reason.Ground == MatchGround.OtherSettings));
        LightNight night = answer.Matches[0].Night!;
        Assert.True(night.Known);
        Assert.Equal(night.Beyond, night.Lights.Count(l => l.Celsius < night.ServesFrom || l.Celsius > night.ServesTo));
        Assert.InRange(night.Beyond, 1, 20);
    }

    [Fact]
    public void HeadersThatFitTwoModesAreNotGuessed()
    {
        FrameSet silent = Sets.Of(FrameKind.Light, 20, 300, -10) is var set
            ? set with
            {
                Settings = new ModeSettings { Offset = 30 },
            }
            : null!;
        CameraProfile two = new Tarn().Profile(
            new Tarn().Mode() with
            {
                Settings = new ModeSettings { Gain = 0, Offset = 30 },
            }
        );
        LightMatch match = DarkMatching.Find(two, Question(silent, Sets.Of(FrameKind.Dark, 60, 300, -10))).Matches[0];
        Assert.Equal(MatchVerdict.CannotTell, match.Verdict);
        Assert.Equal(MatchGround.SeveralModes, match.Reason.Ground);
        Assert.Equal([100.0, 0.0], match.Reason.Modes.Select(m => m.Gain!.Value).OrderDescending());
    }

    private static SettlingSearch Find(Func<RemainingUncertainty, bool> told) =>
        SettlingSearch.Find(new Tarn().Profile(), Reader(new Tarn()), sky, told);

    private static SensorReader Reader(Tarn tarn) => SensorReader.Of(tarn.Profile(), tarn.Mode());

    private static MatchAnswer Match(Tarn tarn) => DarkMatching.Find(tarn.Profile(), Question(lights, darks));

    private static ToleranceAnswer Tolerance(Tarn tarn) =>
        DarkTolerance.Find(
            tarn.Profile(),
            tarn.Mode(),
            new ToleranceQuestion
            {
                ExposureSeconds = 300,
                TemperatureCelsius = 5,
                Lights = 20,
                Sky = sky,
            }
        );

    private static MatchQuestion Question(FrameSet light, FrameSet dark) =>
        new()
        {
            Lights = [light],
            Darks = [dark],
            Stack = new StackDescription { Sky = sky },
        };
}
