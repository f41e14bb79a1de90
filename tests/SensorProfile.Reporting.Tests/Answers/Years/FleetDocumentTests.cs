using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Years;

namespace SensorProfile.Reporting.Tests.Answers.Years;

/// <summary>All cameras of an archive, and which of them to look at.</summary>
public sealed class FleetDocumentTests
{
    private static readonly CameraProfile measured = TarnProfile.Build();

    [Fact]
    public void ACameraOfWhichAllIsMeasuredIsInOrder()
    {
        AnswerDocument said = Of(measured);
        Assert.Equal(("in-order", "Tarn-9M is in order."), (said.Verdict, said.Sentence));
    }

    [Fact]
    public void ACameraWithoutItsGainIsTheOneToLookAt()
    {
        CameraProfile incomplete = measured with
        {
            Camera = measured.Camera with { Name = "Fell-24C" },
            Modes = [measured.Modes[0] with { Gain = null }],
        };
        AnswerDocument said = Of(measured, incomplete);
        Assert.Equal("look", said.Verdict);
        Assert.StartsWith("Look at Fell-24C:", said.Sentence, StringComparison.Ordinal);
        Assert.Equal(
            ["incomplete", "measured"],
            ((FleetFields)said.Fields!).Cameras.OrderBy(c => c.Camera, StringComparer.Ordinal).Select(c => c.Verdict)
        );
    }

    [Fact]
    public void AnEmptyArchiveIsNoAnswer() => Assert.True(Of().CannotTell);

    private static AnswerDocument Of(params CameraProfile[] profiles) =>
        FleetDocument.Compose(
            new FoundProfiles([.. profiles.Select((p, i) => new ProfileOnDisk($"{i}/profile.json", p))], []),
            new DriftOptions()
        );
}
