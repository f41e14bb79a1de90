using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Structure of the bias level: its parts, the profiles of rows and columns, their spectra.</summary>
internal static class StructureBlocks
{
    /// <summary>The blocks; none when it was not measured.</summary>
    public static IEnumerable<Block> Compose(ModeContext context, FixedPatternProfile pattern)
    {
        if (pattern.Structure is not { Total: { } total } structure)
            yield break;
        string unit = QuantityText.Unit(total.Unit);
        yield return new SubheadingBlock("Rows and columns of the bias level");
        yield return new TableBlock(
            ["Standard deviation of", "all pixels", "rows", "columns", "single pixels"],
            [
                [
                    $"the mean bias, {unit}",
                    TableCell.Of(total),
                    TableCell.Of(structure.Row),
                    TableCell.Of(structure.Column),
                    TableCell.Of(structure.Pixel),
                ],
            ],
            [0.24, 0.2, 0.18, 0.18, 0.2]
        )
        {
            FirstNumberColumn = 1,
        };
        yield return new TextBlock(
            structure.Periods.Count == 0
                ? "The spectra along rows and columns show no regular pattern beyond chance."
                : $"Regular patterns stand out in the spectra: {Periods(structure, "ADU")}. Subtracting a master "
                    + "bias or dark removes them, because they are the same in every frame."
        );
        Panel[] panels =
        [
            .. structure
                .Lines.SelectMany(l =>
                    new[] { LineProfilePlot.Means(l), LineProfilePlot.Spectrum(l, structure.Periods) }
                )
                .OfType<Panel>(),
        ];
        if (panels.Length > 0)
            yield return context.Figure(
                panels,
                "Left: mean level of the columns and of the rows of the mean bias frame, minus that of the whole "
                    + "frame. Right: their spectra; what rises above the dashed line is a regular pattern (chance of "
                    + "one in a million over the whole spectrum), named by its period.",
                "line-profiles",
                2
            );
    }

    /// <summary>"every 8 px from column to column (0.31 ADU); …".</summary>
    public static string Periods(PatternStructure structure, string unit) =>
        string.Join(
            "; ",
            structure.Periods.Select(p =>
                $"every {QuantityText.Number(p.Period, 3)} px "
                + $"{(p.Direction == PatternDirection.Across ? "from column to column" : "from row to row")} "
                + $"({QuantityText.Number(p.Amplitude, 2)} {unit})"
            )
        );
}
