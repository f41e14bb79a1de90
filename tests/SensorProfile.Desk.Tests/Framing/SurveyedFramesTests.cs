using SensorProfile.Cli.Tests.Running;
using SensorProfile.Desk.Framing;
using SensorProfile.Desk.Tests.Running;

namespace SensorProfile.Desk.Tests.Framing;

/// <summary>What a person says of frames stands in a capture table beside the results; the frames stay as they are.</summary>
public sealed class SurveyedFramesTests(OpenDesk desk) : IClassFixture<OpenDesk>, IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void ACorrectionIsKeptBesideTheResultsAndSeenAtOnce()
    {
        SimulatedNight.Write(folder["frames"], SimulatedNight.DarksOnly);
        SortedDictionary<string, string> before = TemporaryFolder.Digests(folder["frames"]);
        SurveyedFrames frames = new(desk.Door, new DeskOptions());
        frames.Look(folder["frames"], CancellationToken.None);
        IReadOnlyList<FrameSetRow> rows = FrameSetRow.In(frames.Survey!.Answer!);
        Assert.Equal([30, 300], rows.Select(r => r.Exposure!.Value).Order());
        Assert.All(rows, r => Assert.Equal(3, r.Frames));

        Assert.Equal("", frames.Correct(rows.Single(r => r.Exposure == 300), "dark", -12, null, null));
        Assert.Equal("", frames.Correct(rows.Single(r => r.Exposure == 30), null, null, null, use: false));

        FrameSetRow left = Assert.Single(FrameSetRow.In(frames.Survey.Answer!));
        Assert.Equal((300, -12, 3), (left.Exposure, left.Temperature, left.Frames));
        Assert.Equal(folder["frames-profile-capture.csv"], frames.Table);
        Assert.True(File.Exists(frames.Table));
        Assert.Equal(before, TemporaryFolder.Digests(folder["frames"]));
    }

    [Fact]
    public void NoTableIsWrittenAmongTheFrames()
    {
        SimulatedNight.Write(folder["frames"], SimulatedNight.DarksOnly);
        SortedDictionary<string, string> before = TemporaryFolder.Digests(folder["frames"]);
        SurveyedFrames frames = new(desk.Door, new DeskOptions());
        frames.Look(folder["frames"], CancellationToken.None);
        frames.Out = folder["frames/results"];
        FrameSetRow row = FrameSetRow.In(frames.Survey!.Answer!)[0];
        Assert.Contains("never written to", frames.Correct(row, "flat", null, null, null), StringComparison.Ordinal);
        Assert.Equal(before, TemporaryFolder.Digests(folder["frames"]));
    }
}
