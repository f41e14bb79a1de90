using Spectre.Console;

namespace SensorProfile.Cli.Terminal;

/// <summary>Progress on a terminal: stage, bar, frames, MB/s and time left on one line that is removed at the end.</summary>
internal sealed class LiveProgress : IProgressDisplay
{
    private readonly Lock gate = new();
    private readonly TimeProvider clock;
    private readonly ProgressTask line;
    private Stage? current;

    private LiveProgress(TimeProvider clock, ProgressTask line)
    {
        this.clock = clock;
        this.line = line;
    }

    public static T Run<T>(IAnsiConsole console, TimeProvider clock, Func<IProgressDisplay, T> work) => console.Progress()
        .AutoClear(true)
        .Columns(new SpinnerColumn(), new TaskDescriptionColumn { Alignment = Justify.Left }, new ProgressBarColumn { Width = Math.Clamp(console.Profile.Width - 60, 8, 30) })
        .Start(context => work(new LiveProgress(clock, context.AddTask("starting"))));

    public void Show(string stage, int done, int total, long bytes)
    {
        lock (gate)
        {
            if (stage != current?.Name) current = new Stage(stage, clock, bytes);
            string[] parts = [stage, total > 0 ? $"{done}/{total}" : "", current.Speed(bytes), current.Left(done, total)];
            line.Description = Markup.Escape(string.Join("  ", parts.Where(p => p.Length > 0)));
            line.IsIndeterminate = total <= 0;
            line.MaxValue = Math.Max(1, total);
            line.Value = Math.Min(done, line.MaxValue);
        }
    }
}
