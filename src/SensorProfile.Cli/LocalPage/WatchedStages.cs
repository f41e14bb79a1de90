using SensorProfile.Cli.Terminal;
using SensorProfile.Desk.Asking;

namespace SensorProfile.Cli.LocalPage;

/// <summary>Progress for the desk, with the same speed and time left as on the terminal.</summary>
internal sealed class WatchedStages(IDeskWatcher? watcher, TimeProvider clock) : IProgressDisplay
{
    private readonly Lock gate = new();
    private Stage? current;

    public void Show(string stage, int done, int total, long bytes)
    {
        DeskProgress progress;
        lock (gate)
        {
            if (stage != current?.Name)
                current = new Stage(stage, clock, bytes);
            progress = new DeskProgress(stage, done, total, current.Speed(bytes), current.Left(done, total));
        }
        watcher?.Heard(progress);
    }
}
