using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>Plots that belong together, with their caption.</summary>
/// <param name="Number">Figure number, counted through the report.</param>
/// <param name="Caption">What the figure shows, how errors are drawn, what to conclude.</param>
/// <param name="Panels">Plots from top to bottom; in a narrow figure they may stand side by side.</param>
internal sealed record FigureBlock(int Number, string Caption, IReadOnlyList<Panel> Panels) : Block
{
    /// <summary>Number of panels side by side where there is room.</summary>
    public int Columns { get; init; } = 1;

    /// <summary>Whether the panels must keep their aspect ratio, as pictures must.</summary>
    public bool KeepsShape { get; init; }

    /// <summary>Name of the table in <c>tables/</c> that holds the numbers.</summary>
    public string? Table { get; init; }
}
