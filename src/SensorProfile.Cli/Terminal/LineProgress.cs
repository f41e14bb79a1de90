using SensorProfile.Frames;

namespace SensorProfile.Cli.Terminal;

/// <summary>Progress for logs and pipes: a line when a stage starts, then one every ten seconds at most.</summary>
internal sealed class LineProgress(TextWriter writer, TimeProvider clock, Letters letters) : IProgressDisplay
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(10);
    private readonly Lock gate = new();
    private Stage? current;
    private long printed;

    public void Show(string stage, int done, int total, long bytes)
    {
        lock (gate)
        {
            if (stage != current?.Name)
            {
                current = new Stage(stage, clock, bytes);
                printed = clock.GetTimestamp();
                writer.WriteLine(letters.Shown(stage + (total > 0 ? $", {Counted.Nouns(total, "frame")}" : "") + " …"));
            }
            else if (done < total && clock.GetElapsedTime(printed) >= Pause)
            {
                printed = clock.GetTimestamp();
                string[] parts =
                [
                    $"{stage}: {done} of {Counted.Nouns(total, "frame")}",
                    current.Speed(bytes),
                    current.Left(done, total),
                ];
                writer.WriteLine(letters.Shown(string.Join(", ", parts.Where(p => p.Length > 0))));
            }
        }
    }
}
