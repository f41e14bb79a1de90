using Spectre.Console;

namespace SensorProfile.Cli.Terminal;

/// <summary>
/// Progress on a terminal: stage, bar, frames, MB/s and time left on one line that is removed at the end.
/// </summary>
internal sealed class LiveProgress : IProgressDisplay
{
    private const int NarrowColumns = 60;

    private readonly Lock gate = new();
    private readonly TimeProvider clock;
    private readonly ProgressTask line;
    private readonly bool narrow;
    private readonly Letters letters;
    private Stage? current;

    private LiveProgress(TimeProvider clock, ProgressTask line, bool narrow, Letters letters)
    {
        this.letters = letters;
        this.narrow = narrow;
        this.clock = clock;
        this.line = line;
    }

    public static T Run<T>(IAnsiConsole console, TimeProvider clock, Letters letters, Func<IProgressDisplay, T> work)
    {
        bool narrow = console.Profile.Width < NarrowColumns;
        ProgressColumn stage = new TaskDescriptionColumn { Alignment = Justify.Left },
            bar = new ProgressBarColumn { Width = Math.Clamp(console.Profile.Width - NarrowColumns, 8, 30) };
        return console
            .Progress()
            .AutoClear(true)
            .Columns(narrow ? [new SpinnerColumn(), stage] : [new SpinnerColumn(), stage, bar])
            .Start(context => work(new LiveProgress(clock, context.AddTask("starting"), narrow, letters)));
    }

    public void Show(string stage, int done, int total, long bytes)
    {
        lock (gate)
        {
            if (stage != current?.Name)
                current = new Stage(stage, clock, bytes);
            string count = total > 0 ? $"{done}/{total}" : "";
            string[] parts = narrow ? [stage, count] : [stage, count, current.Speed(bytes), current.Left(done, total)];
            line.Description = Markup.Escape(letters.Shown(string.Join("  ", parts.Where(p => p.Length > 0))));
            line.IsIndeterminate = total <= 0;
            line.MaxValue = Math.Max(1, total);
            line.Value = Math.Min(done, line.MaxValue);
        }
    }
}
