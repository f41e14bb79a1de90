using SensorProfile.Drift.MasterDarks;
using SensorProfile.Drift.Patches;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;

namespace SensorProfile.Reporting.Tests.Answers.Darks;

/// <summary>A check of master darks in words.</summary>
public class DarkLibraryDocumentTests
{
    private static readonly ModeSettings _settings = new() { Gain = 100, Offset = 30 };

    [Fact]
    public void ADamagedMasterIsNamedAndTheRestIsKept()
    {
        AnswerDocument said = Say(
            Master(
                CheckVerdict.CannotTell,
                new(MasterGround.Unreadable) { Problem = "the file ends early" },
                "torn.fits"
            ),
            Master(CheckVerdict.Keep, new(MasterGround.Residual))
        );
        Assert.Equal("Cannot tell for torn.fits. Keep the rest.", said.Sentence);
        Assert.Equal("torn.fits: It cannot be read: the file ends early", said.Reason);
    }

    [Fact]
    public void FreshDarksOfAnotherExposureAreNoEvidence() =>
        Assert.Equal(
            "master.fits: Cannot tell: no fresh darks like it (120 s, −10 °C): those given are 300 s, −10 °C.",
            Say(
                Master(
                    CheckVerdict.CannotTell,
                    new(MasterGround.OtherConditions)
                    {
                        Master = new DarkConditions(160, 128, _settings, 120, -10),
                        Others = [new DarkConditions(160, 128, _settings, 300, -10)],
                    }
                )
            ).Reason
        );

    [Fact]
    public void AMasterOfHalfTheExposureIsNotWhatItsHeaderSays()
    {
        AnswerDocument said = Say(
            Master(
                CheckVerdict.Retake,
                new(MasterGround.Residual) { Contradiction = new HeaderContradiction(2, 150, 7, false) }
            )
        );
        Finding finding = Assert.Single(said.Findings, f => f.Code == "master-not-as-stated");
        Assert.Contains("150 s or a sensor 7 °C colder would give", finding.Message, StringComparison.Ordinal);
        Assert.StartsWith("master.fits: its hot pixels hold 0.5 times", said.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void ATurnedMasterIsToBeBroughtBack()
    {
        AnswerDocument said = Say(
            Master(CheckVerdict.Keep, new(MasterGround.Residual)) with
            {
                Realigned = "rotated by 180°",
            }
        );
        Assert.EndsWith(
            "Realign master.fits before you use it: it is rotated by 180°.",
            said.Sentence,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "master.fits: It is rotated by 180°; judged after realigning it: It adds ",
            said.Reason,
            StringComparison.Ordinal
        );
        Assert.Contains(said.Findings, f => f.Code == "master-turned");
    }

    [Fact]
    public void AnotherSensorIsNamedWithItsEvidence()
    {
        AnswerDocument said = Say(
            Master(CheckVerdict.Retake, new(MasterGround.OtherSensor) { Common = new CommonHotPixels(2, 180, 1.4) })
        );
        Assert.StartsWith(
            "master.fits: Its hot pixels are not those of the fresh darks (2 of 180 hot pixels are in common where "
                + "chance gives 1.4)",
            said.Reason,
            StringComparison.Ordinal
        );
        Assert.Contains(said.Findings, f => f.Code == "another-sensor");
    }

    [Theory]
    [InlineData(null, 1.1, "(as much as the noise of a single dark)")]
    [InlineData(null, 6.0, "(as much as the noise of a master of 6 darks)")]
    [InlineData(0.8, 1.1, "; most of that is the master's own noise: it holds too few frames")]
    public void ANoisyMasterSaysOfHowManyFramesItIs(double? own, double alike, string said) =>
        Assert.Contains(
            said,
            Say(
                Master(CheckVerdict.Retake, new(MasterGround.Residual) { OwnNoise = own, FramesAlike = alike }) with
                {
                    Parts = [Part(ResidualKind.Typical, CheckVerdict.Retake)],
                }
            ).Reason,
            StringComparison.Ordinal
        );

    [Fact]
    public void NewHotPixelsAreNamedWithTheirPatch()
    {
        string reason = Say(
            Master(CheckVerdict.Retake, new(MasterGround.Residual) { OwnNoise = 0 }) with
            {
                Parts = [Part(ResidualKind.NewHot, CheckVerdict.Retake)],
                Patches = [new GrowingPatch(52, 432, 24, 31, 1.2, 0.005, "near the lower left corner", [])],
            }
        ).Reason;
        Assert.Contains("hot now but not in it", reason, StringComparison.Ordinal);
        Assert.Contains("31 of them in a patch near the lower left corner", reason, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutFreshBiasFramesACalibratedMasterCannotBeJudged() =>
        Assert.Contains(
            "add a few bias frames",
            Say(Master(CheckVerdict.CannotTell, new(MasterGround.Residual) { BiasPatternStays = true })).Reason,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(GainSource.Unknown, "gain-unknown")]
    [InlineData(GainSource.HotPixels, "gain-from-hot-pixels")]
    public void AGainThatIsNotOfAProfileIsSaid(GainSource source, string code) =>
        Assert.Contains(
            DarkLibraryDocument
                .Compose(
                    Answer(Master(CheckVerdict.Keep, new(MasterGround.Residual))) with
                    {
                        GainFrom = source,
                        Gain = source == GainSource.Unknown ? null : Of(0.8, "e-/ADU"),
                    }
                )
                .Findings,
            f => f.Code == code
        );

    private static AnswerDocument Say(params MasterVerdict[] masters) => DarkLibraryDocument.Compose(Answer(masters));

    internal static DarkLibraryAnswer Answer(params MasterVerdict[] masters) =>
        new()
        {
            Library = masters.Any(m => m.Verdict == CheckVerdict.Retake) ? CheckVerdict.Retake : masters[0].Verdict,
            Stack = new DarkLibraryOptions(),
            GainFrom = GainSource.Profile,
            Gain = Of(0.8, "e-/ADU"),
            Masters = masters,
        };

    internal static MasterVerdict Master(CheckVerdict verdict, MasterReason reason, string file = "master.fits") =>
        new(reason)
        {
            File = file,
            Verdict = verdict,
            Loss = Of(4, "%"),
            Exposure = 300,
            Temperature = -10,
        };

    private static ResidualPart Part(ResidualKind kind, CheckVerdict verdict) =>
        new(kind, Of(0.01, "1"), 0.001, verdict);

    private static Measurement Of(double value, string unit) => new(value, 0.01 * value, unit, 100, "stated");
}
