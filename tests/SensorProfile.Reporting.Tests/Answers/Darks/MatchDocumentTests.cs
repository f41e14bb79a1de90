using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Frames;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Reporting.Tests.Answers.Darks;

/// <summary>Lights and darks on disk in words.</summary>
public class MatchDocumentTests
{
    private static readonly FrameSet _lights = Sets.Of(FrameKind.Light, 20, 300, -10);

    [Fact]
    public void DarksThatFitSayTheLoss()
    {
        AnswerDocument said = Ask(_lights, Sets.Of(FrameKind.Dark, 60, 300, -10));
        Assert.StartsWith("These darks fit the lights (loss ", said.Sentence, StringComparison.Ordinal);
        Assert.Equal("fits", said.Verdict);
    }

    [Fact]
    public void FarDarksAreToBeTakenAnew()
    {
        AnswerDocument said = Ask(_lights, Sets.Of(FrameKind.Dark, 60, 300, 5));
        Assert.Equal("These darks do not fit the lights: take new ones.", said.Sentence);
        Assert.Contains("To fit, take", said.Reason, StringComparison.Ordinal);
    }

    [Theory] // a difference of nothing is not said
    [InlineData(300, 5, "darks 15 °C warmer, ")]
    [InlineData(150, -10, "darks of 150 s instead of 300 s, ")]
    [InlineData(150, -14, "darks 4 °C colder and of 150 s instead of 300 s, ")]
    public void TheReasonSaysWhatDiffers(double exposure, double celsius, string expected) =>
        Assert.Contains(
            $" with {expected}",
            Ask(_lights, Sets.Of(FrameKind.Dark, 60, exposure, celsius)).Reason,
            StringComparison.Ordinal
        );

    [Fact]
    public void TooFewDarksAreNamedAsTheCause() =>
        Assert.Contains(
            "20 darks for a stack of 100 lights",
            Ask(Sets.Of(FrameKind.Light, 100, 60, -10), Sets.Of(FrameKind.Dark, 20, 60, -10)).Reason,
            StringComparison.Ordinal
        );

    [Fact]
    public void OtherSettingsAreNamed() =>
        Assert.Equal(
            "No dark set has the camera, size or crop, and settings of these lights (gain 100, offset 30, 3000 × 3000 px); "
                + "the darks were taken at gain 0, offset 30: take darks with these settings.",
            Ask(_lights, Sets.Of(FrameKind.Dark, 60, 300, -10, gain: 0)).Reason
        );

    [Fact] // one dark against one light (1.8 + 2.25 + 0.053)/154.1, 20 lights, 5 %: 6 darks of 302 s with read-out
    public void AnUnknownTemperatureCannotBeTold()
    {
        AnswerDocument said = Ask(_lights, Sets.Of(FrameKind.Dark, 60, 300, null));
        Assert.Equal(
            "The temperature of the darks is not known: enter it in the capture table, or take 6 darks of 300 s "
                + "at −10 °C (30 min).",
            said.Reason
        );
        Assert.True(said.CannotTell);
    }

    [Fact] // 1.34 times the limit, and a profile known to 20 %
    public void WhatWouldSettleItStandsBesideDarksThatFitInAnyCase()
    {
        AnswerDocument said = MatchDocument.Compose(
            DarkMatching.Find(
                new Tarn { Relative = 0.2, HotShare = 0 }.Profile(),
                Question([Sets.Of(FrameKind.Light, 20, 300, 5)], [Sets.Of(FrameKind.Dark, 60, 300, 9.2)])
            ),
            null,
            []
        );
        Assert.Contains("more should settle it", said.Reason, StringComparison.Ordinal);
        Assert.Contains("darks of 300 s at 5 °C: they fit in any case", said.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void LightsOutOfReachAskForDarksThere() =>
        Assert.EndsWith(
            "(12 darks of 30, 100 and 300 s at 22 °C (29 min)).",
            Ask(Sets.Of(FrameKind.Light, 20, 300, 22), Sets.Of(FrameKind.Dark, 60, 300, 9.2)).Reason,
            StringComparison.Ordinal
        );

    [Fact]
    public void HeadersThatFitTwoModesAreSaid()
    {
        CameraProfile two = new Tarn().Profile(
            new Tarn().Mode() with
            {
                Settings = new ModeSettings { Gain = 0, Offset = 30 },
            }
        );
        FrameSet silent = _lights with { Settings = new ModeSettings { Offset = 30 } };
        Assert.StartsWith(
            "The headers do not say which of the modes",
            MatchDocument
                .Compose(DarkMatching.Find(two, Question([silent], [Sets.Of(FrameKind.Dark, 60, 300, -10)])), null, [])
                .Reason,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void EveryLightSetHasItsRowAndADriftingNightIsWarnedOf()
    {
        MatchAnswer answer = DarkMatching.Find(
            new Tarn().Profile(),
            Question(
                [Sets.Of(FrameKind.Light, 21, 300, -10, drift: 6), Sets.Of(FrameKind.Light, 20, 300, 5)],
                [
                    Sets.Of(FrameKind.Dark, 60, 300, -10),
                    Sets.Of(FrameKind.Dark, 60, 300, 9.2),
                    Sets.Of(FrameKind.Dark, 60, 300, 5, gain: 0),
                ]
            )
        );
        AnswerDocument said = MatchDocument.Compose(answer, null, []);
        Assert.Equal(2, answer.Pairs.Count(p => MatchWords.Reason(p) == "Taken with other settings."));
        // −13 … −7 °C: variance 3.3 °C², the mean dark current is that of −10 + 3.3·ln 2/12
        Assert.Equal("21 lights of 300 s at −9.8 °C, gain 100, offset 30", said.Tables[0].Rows[0][0]);
        Assert.Contains(said.Findings, f => f.Code == "lights-drift");
        Assert.Contains(said.Findings, f =>
            f.Code == "lights-beyond-tolerance"
            && f.Message.StartsWith($"{answer.Matches[0].Night!.Beyond} of the lights", StringComparison.Ordinal)
        );
    }

    private static AnswerDocument Ask(FrameSet lights, FrameSet darks) =>
        MatchDocument.Compose(DarkMatching.Find(new Tarn().Profile(), Question([lights], [darks])), null, []);

    private static MatchQuestion Question(FrameSet[] lights, FrameSet[] darks) =>
        new()
        {
            Lights = lights,
            Darks = darks,
            Stack = new StackDescription { Sky = SkyRate.Given(0.5) },
        };
}
