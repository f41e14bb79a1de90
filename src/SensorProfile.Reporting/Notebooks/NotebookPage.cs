using System.Runtime.CompilerServices;
using System.Text;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Content.Years;
using SensorProfile.Reporting.Handbook;
using SensorProfile.Reporting.Html;

namespace SensorProfile.Reporting.Notebooks;

/// <summary>
/// A page of a program's own: words, its code, tables, plots in the report's look, and figures and answers of the report
/// itself. One HTML file that needs nothing else.
/// </summary>
/// <remarks>The code of a cell are the lines of the source between one call of <see cref="Cell"/> and the next.</remarks>
public sealed class NotebookPage
{
    private readonly string title;
    private readonly string place;
    private readonly string[] source;
    private readonly FigureCounter figures = new();
    private readonly List<(int Line, StringBuilder Output, string Heading, string Words)> cells = [];
    private readonly StringBuilder opening = new();

    /// <summary>An empty page.</summary>
    /// <param name="title">Its heading.</param>
    /// <param name="introduction">What it is about.</param>
    /// <param name="source">The calling source file, whose code is shown; the compiler fills it in.</param>
    public NotebookPage(string title, string introduction, [CallerFilePath] string source = "")
    {
        ArgumentNullException.ThrowIfNull(title);
        this.title = title;
        place = Path.GetFullPath(source);
        this.source = File.Exists(source) ? File.ReadAllLines(source) : [];
        Put(opening, new TextBlock(introduction));
    }

    private StringBuilder Here => cells.Count > 0 ? cells[^1].Output : opening;

    /// <summary>Begins a cell: what follows in the source is its code, what it adds its output.</summary>
    /// <param name="heading">Its heading.</param>
    /// <param name="words">What it does and why.</param>
    /// <param name="line">Line of the call; the compiler fills it in.</param>
    public void Cell(string heading, string words, [CallerLineNumber] int line = 0) =>
        cells.Add((line, new StringBuilder(), heading, words));

    /// <summary>Adds a paragraph.</summary>
    /// <param name="words">Plain text.</param>
    public void Text(string words) => Put(Here, new TextBlock(words));

    /// <summary>Adds a table; the first column holds words, the others numbers.</summary>
    /// <param name="heads">Heads of the columns.</param>
    /// <param name="rows">As many cells as heads.</param>
    public void Table(IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<string>> rows)
    {
        ArgumentNullException.ThrowIfNull(heads);
        Put(
            Here,
            new TableBlock(heads, [.. rows], [.. heads.Select(_ => 1.0 / heads.Count)]) { FirstNumberColumn = 1 }
        );
    }

    /// <summary>Adds a plot.</summary>
    /// <param name="plot">The plot.</param>
    /// <param name="caption">What is seen, what to conclude.</param>
    public void Plot(NotebookPlot plot, string caption)
    {
        ArgumentNullException.ThrowIfNull(plot);
        Put(Here, new FigureBlock(figures.Next(), caption, [plot.Draw()]));
    }

    /// <summary>Adds figures of the report, by the tables that hold their numbers: "photon-transfer".</summary>
    /// <param name="profile">The camera; its first mode.</param>
    /// <param name="tables">Names of tables, without folder and ending.</param>
    public void ReportFigures(CameraProfile profile, params IReadOnlyList<string> tables)
    {
        ArgumentNullException.ThrowIfNull(profile);
        var context = new ModeContext(profile.Modes[0], null, "", profile.Findings, new FigureCounter());
        foreach (
            FigureBlock figure in ReportContent
                .Measured(context, [])
                .SelectMany(section => section.Blocks)
                .OfType<FigureBlock>()
                .Where(f => tables.Any(name => f.Table?.EndsWith($"/{name}.csv", StringComparison.Ordinal) == true))
        )
            Put(Here, figure with { Number = figures.Next(), Table = null });
    }

    /// <summary>Adds an answer with its curve: how cold to run.</summary>
    /// <param name="answer">The answer.</param>
    public void Answer(SetpointAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        Put(Here, DecisionBlocks.Head(SetpointDocument.Compose(answer)));
        if (SetpointBlocks.Figure([answer, .. answer.OtherSkies], figures, "") is { } figure)
            Put(Here, figure with { Table = null });
    }

    /// <summary>Adds an answer with its curves and causes: how far off the darks may be.</summary>
    /// <param name="answer">The answer.</param>
    public void Answer(ToleranceAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        Put(Here, DecisionBlocks.Head(ToleranceDocument.Compose(answer)));
        if (ToleranceBlocks.Figure(figures, "", (answer, "")) is { } figure)
            Put(Here, figure with { Table = null });
        Put(Here, ToleranceBlocks.Causes(answer));
    }

    /// <summary>Adds a comparison over the years: verdict, hot pixels, every quantity.</summary>
    /// <param name="answer">The comparison.</param>
    public void Answer(DriftAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ReportDocument report = DriftContent.Build(answer, DateTimeOffset.UnixEpoch);
        foreach (Block block in report.Sections.SelectMany(section => section.Blocks))
            Put(Here, block is FigureBlock figure ? figure with { Number = figures.Next(), Table = null } : block);
    }

    /// <summary>A file by its place relative to the source.</summary>
    /// <param name="relative">With forward slashes: "../reports/profile.json".</param>
    public string Beside(string relative) => Path.GetFullPath(relative, Path.GetDirectoryName(place)!);

    /// <summary>Writes the page.</summary>
    /// <param name="path">Its file, replaced when it exists; null for one beside the source and of its name.</param>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Write(string? path = null) =>
        AtomicFile.Write(path ?? Path.ChangeExtension(place, ".html"), stream =>
            stream.Write(Encoding.UTF8.GetBytes(Page()))
        );

    private string Page()
    {
        var body = new StringBuilder(opening.ToString());
        for (int i = 0; i < cells.Count; i++)
        {
            (int line, StringBuilder output, string heading, string words) = cells[i];
            body.Append("<h2>").Append(Markup.Escape(heading)).Append("</h2>\n");
            Put(body, new TextBlock(words));
            string code = Code(line, i + 1 < cells.Count ? cells[i + 1].Line : source.Length + 1);
            if (code.Length > 0)
                body.Append("<pre tabindex=\"0\"><code>").Append(EscapeCode(code)).Append("</code></pre>\n");
            body.Append(output);
        }
        return HtmlReport.Plain(title, HandbookPages.StyleSheet(), $"<h1>{Markup.Escape(title)}</h1>\n{body}");
    }

    /// <summary>The lines from after one call to before the next, without the end of the first.</summary>
    private string Code(int from, int to)
    {
        if (from >= source.Length)
            return "";
        int first = from - 1;
        while (first < source.Length && !source[first].TrimEnd().EndsWith(");", StringComparison.Ordinal))
            first++;
        int last = Math.Min(to - 1, source.Length);
        return first + 1 < last ? string.Join('\n', source[(first + 1)..last]).Trim('\n', ' ') : "";
    }

    private static string EscapeCode(string code) =>
        string.Join('\n', code.Split('\n').Select(line => System.Security.SecurityElement.Escape(line)));

    private static void Put(StringBuilder page, Block block) => HtmlBlocks.Append(page, block);
}
