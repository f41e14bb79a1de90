using SensorProfile.Profiles;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>One mode on its way into the report.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="Label">Its settings in words; null when it is the only one.</param>
/// <param name="TableFolder">Folder of its tables within <c>tables/</c>, with a slash; empty when it is the only
/// one.</param>
/// <param name="Findings">The findings of the profile.</param>
/// <param name="Figures">Counts the figures.</param>
internal sealed record ModeContext(
    ModeProfile Mode,
    string? Label,
    string TableFolder,
    IReadOnlyList<Finding> Findings,
    FigureCounter Figures
)
{
    /// <summary>A figure of one panel, with its number and the table that holds its numbers.</summary>
    public FigureBlock Figure(Panel panel, string caption, string table) => Figure([panel], caption, table, 1);

    /// <summary>A figure of several panels.</summary>
    public FigureBlock Figure(IReadOnlyList<Panel> panels, string caption, string table, int columns) =>
        new(Figures.Next(), caption, panels) { Table = $"tables/{TableFolder}{table}.csv", Columns = columns };

    /// <summary>Says that something is missing, why (as far as the findings tell), and what it would take.</summary>
    /// <param name="what">What is missing and what it needs, as a sentence.</param>
    /// <param name="codes">Codes of the findings about it.</param>
    public IEnumerable<Block> Absent(string what, IReadOnlyList<string> codes)
    {
        yield return new TextBlock(what);
        Finding[] reasons = [.. Findings.Where(f => f.Severity != Severity.Note && codes.Contains(f.Code))];
        if (reasons.Length > 0)
            yield return new FindingsBlock(reasons);
    }
}
