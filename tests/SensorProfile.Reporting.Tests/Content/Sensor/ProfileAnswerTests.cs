using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Sensor;

namespace SensorProfile.Reporting.Tests.Content.Sensor;

public class ProfileAnswerTests
{
    private static readonly ModeProfile _whole = TarnProfile.Mode();

    [Fact]
    public void KeepWhenEverythingIsThere()
    {
        AnswerBlock answer = ProfileAnswer.Of(
            new CameraProfile { Modes = [_whole], Findings = [new Finding("a", Severity.Note, "Worth knowing.")] }
        );
        Assert.Equal(Verdict.Keep, answer.Verdict);
        Assert.Equal(
            "Keep these numbers: everything that was asked for was measured, and nothing speaks against it.",
            answer.Reason
        );
    }

    [Fact]
    public void KeepWithCareWhenThereIsAWarning()
    {
        AnswerBlock answer = ProfileAnswer.Of(
            new CameraProfile { Modes = [_whole], Findings = [new Finding("a", Severity.Warning, "The level moved.")] }
        );
        Assert.Equal(Verdict.KeepWithCare, answer.Verdict);
        Assert.Equal("Keep these numbers, and mind the warning among the findings below.", answer.Reason);
    }

    [Fact]
    public void CannotTellWhenANumberIsMissingAndWhy()
    {
        Finding[] findings =
        [
            new("w", Severity.Warning, "The level moved."),
            new("flats-missing", Severity.Refusal, "There are no flats."),
        ];
        AnswerBlock answer = ProfileAnswer.Of(
            new CameraProfile { Modes = [_whole with { Gain = null }], Findings = findings }
        );
        Assert.Equal(Verdict.CannotTell, answer.Verdict);
        Assert.Equal("Cannot tell gain. There are no flats.", answer.Reason);
    }

    [Fact]
    public void SaysAtWhichSettingANumberIsMissing()
    {
        ModeProfile other = _whole with
        {
            Settings = new ModeSettings { Iso = 800 },
            ReadNoise = null,
            Gain = null,
        };
        Assert.Equal(
            "Cannot tell read noise in electrons and gain at ISO 800. The findings below say which frames would help.",
            ProfileAnswer.Of(new CameraProfile { Modes = [_whole, other] }).Reason
        );
    }
}
