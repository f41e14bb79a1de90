using System.Diagnostics;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.Screening;

/// <summary>Measures the cost of the stages of a characterisation; stages follow each other without overlap.</summary>
/// <remarks>
/// None of this reaches a result, because times differ from run to run. Processor time covers the whole process,
/// including any other work it does meanwhile.
/// </remarks>
internal sealed class StageClock
{
    private readonly List<StageTime> stages = [];
    private readonly ReadByteCounter tally = new();
    private string? stage;
    private (long Ticks, TimeSpan Processor, long Read, long Allocated) began;

    /// <summary>The completed stages, in order; one that ran several times appears once, with its total.</summary>
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

    /// <summary>Ends the current stage and begins a new one.</summary>
    /// <param name="name">Name of the new stage.</param>
    public void Begin(string name)
    {
        End();
        stage = name;
        began = Now();
    }

    /// <summary>Ends the current stage, if there is one.</summary>
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

    /// <summary>Wraps the frames so that the bytes read from them are counted.</summary>
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
