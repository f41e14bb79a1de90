using SensorProfile.Cli.Tests.Running;
using SensorProfile.Desk.Measuring;
using SensorProfile.Desk.Tests.Running;

namespace SensorProfile.Desk.Tests.Measuring;

/// <summary>A measurement can be watched, cancelled and taken up again.</summary>
public sealed class MeasureJobTests(OpenDesk desk) : IClassFixture<OpenDesk>, IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task ACancelledRunLeavesNothingAndCanBeginAnew()
    {
        SimulatedNight.Write(folder["frames"], SimulatedNight.DarksOnly);
        using MeasureJob job = new(desk.Door, new DeskOptions());
        MeasureOrder order = new() { Folder = folder["frames"], Out = folder["results"] };
        TaskCompletionSource over = new(TaskCreationOptions.RunContinuationsAsynchronously);
        job.Changed += () =>
        {
            if (job is { State: MeasureState.Running, Stages.Count: > 0 })
                job.Cancel();
            if (job.State == MeasureState.Cancelled)
                over.TrySetResult();
        };
        job.Begin(order);
        await over.Task.WaitAsync(Patience);
        Assert.Null(job.Reply);
        Assert.Equal(["frames"], Directory.EnumerateFileSystemEntries(folder.Path).Select(Path.GetFileName));

        using MeasureJob again = new(desk.Door, new DeskOptions());
        TaskCompletionSource done = new(TaskCreationOptions.RunContinuationsAsynchronously);
        again.Changed += () =>
        {
            if (!again.IsRunning)
                done.TrySetResult();
        };
        again.Begin(order);
        await done.Task.WaitAsync(Patience);
        Assert.Equal(MeasureState.Done, again.State);
        Assert.True(File.Exists(folder["results/profile.json"]));
        Assert.Contains(again.Stages, s => s is { Total: > 0 } && s.Done == s.Total);
    }

    [Fact]
    public async Task WhatIsNotOursIsNeverReplaced()
    {
        SimulatedNight.Write(folder["frames"], SimulatedNight.DarksOnly);
        Directory.CreateDirectory(folder["mine"]);
        File.WriteAllText(folder["mine/letter.txt"], "dear");
        using MeasureJob job = new(desk.Door, new DeskOptions());
        TaskCompletionSource over = new(TaskCreationOptions.RunContinuationsAsynchronously);
        job.Changed += () =>
        {
            if (!job.IsRunning)
                over.TrySetResult();
        };
        job.Begin(new MeasureOrder { Folder = folder["frames"], Out = folder["mine"] });
        await over.Task.WaitAsync(Patience);
        Assert.Equal(MeasureState.Failed, job.State);
        Assert.Contains("exists", job.Reply!.Trouble, StringComparison.Ordinal);
        Assert.Equal("dear", File.ReadAllText(folder["mine/letter.txt"]));
    }
}
