using System.Diagnostics;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.Screening;

/// <summary>Measures what the stages of a characterisation cost; stages follow each other and do not overlap.</summary>
/// <remarks>
/// Nothing of it reaches a result: times differ from run to run. A process that does other things at the same time has
/// their processor time counted in.
/// </remarks>
public sealed class StageClock
{
    private readonly List<StageTime> stages = [];
    private readonly ReadTally tally = new();
    private string? stage;
    private (long Ticks, TimeSpan Processor, long Read, long Allocated) began;

    /// <summary>The stages that have ended, in order; one that was begun several times stands once, with its sum.</summary>
    public IReadOnlyList<StageTime> Stages =>
        [
            .. stages
                .GroupBy(s => s.Stage)
                .Select(s => new StageTime(
                    s.Key,
                    s.Sum(t => t.WallSeconds),
                    s.Sum(t => t.ProcessorSeconds),
                    s.Sum(t => t.BytesRead),
                    s.Sum(t => t.AllocatedBytes)
                )),
        ];

    /// <summary>Pixel data of all frames, read once, bytes; 0 before they are known.</summary>
    public long BytesOfFrames { get; private set; }

    /// <summary>Ends the stage before and begins this one.</summary>
    /// <param name="name">What is done.</param>
    public void Begin(string name)
    {
        End();
        stage = name;
        began = Now();
    }

    /// <summary>Ends the stage that was begun; nothing when none was.</summary>
    public void End()
    {
        if (stage is null)
            return;
        var now = Now();
        stages.Add(
            new StageTime(
                stage,
                Stopwatch.GetElapsedTime(began.Ticks, now.Ticks).TotalSeconds,
                (now.Processor - began.Processor).TotalSeconds,
                now.Read - began.Read,
                now.Allocated - began.Allocated
            )
        );
        stage = null;
    }

    /// <summary>The frames, so wrapped that what is read of them is counted.</summary>
    internal IReadOnlyList<IFrameSamples> Counting(IReadOnlyList<IFrameSamples> frames)
    {
        BytesOfFrames += frames.Sum(f => 2L * f.Width * f.Height);
        return [.. frames.Select(f => new CountedSamples(f, tally))];
    }

    private (long Ticks, TimeSpan Processor, long Read, long Allocated) Now() =>
        (Stopwatch.GetTimestamp(), Processor(), tally.Bytes, GC.GetTotalAllocatedBytes());

    private static TimeSpan Processor()
    {
        using Process own = Process.GetCurrentProcess();
        return own.TotalProcessorTime;
    }
}
