using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>Plots that belong together, with the words that say what they show.</summary>
/// <param name="Number">Figure number, counted through the report.</param>
/// <param name="Caption">What is seen, how the errors are drawn, what to conclude.</param>
/// <param name="Panels">Plots from top to bottom; those of a narrow figure may stand side by side.</param>
internal sealed record FigureBlock(int Number, string Caption, IReadOnlyList<Panel> Panels) : Block
{
    /// <summary>Panels beside each other where there is room.</summary>
    public int Columns { get; init; } = 1;

    /// <summary>Whether its panels have a shape that must be kept, as pictures have.</summary>
    public bool KeepsShape { get; init; }

    /// <summary>Name of the table in <c>tables/</c> that holds the numbers.</summary>
    public string? Table { get; init; }
}
