using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Structure of the response, lines that stand out, and boundaries between parts of the sensor.</summary>
internal static class ResponseBlocks
{
    private const int MaxLines = 12;

    /// <summary>The blocks; none for profiles without these measurements.</summary>
    public static IEnumerable<Block> Compose(FixedPatternProfile pattern) =>
        [.. Response(pattern), .. Lines(pattern), .. Boundaries(pattern)];

    private static IEnumerable<Block> Response(FixedPatternProfile pattern)
    {
        if (pattern.ResponseStructure is not { } structure)
            yield break;
        yield return new SubheadingBlock("Structure of the response to light");
        yield return new TableBlock(
            ["Part", "Standard deviation, % of the signal"],
            [
                ["all pixels", TableCell.Of(structure.Total)],
                ["common to rows", TableCell.Of(structure.Row)],
                ["common to columns", TableCell.Of(structure.Column)],
                ["single pixels", TableCell.Of(structure.Pixel)],
            ],
            [0.5, 0.5]
        )
        {
            FirstNumberColumn = 1,
        };
        if (structure.Periods.Count > 0)
            yield return new TextBlock(
                $"Regular patterns in the flats: {StructureBlocks.Periods(structure, "%")}. A master flat divides them "
                    + "out."
            );
    }

    private static IEnumerable<Block> Lines(FixedPatternProfile pattern)
    {
        if (pattern.Lines.Count == 0)
            yield break;
        yield return new SubheadingBlock("Columns and rows that stand out");
        yield return new TableBlock(
            ["Line", "Part", "Seen in", "Excess"],
            [
                .. pattern
                    .Lines.OrderByDescending(l => Math.Abs(l.Excess.Value) / l.Excess.StandardUncertainty)
                    .Take(MaxLines)
                    .Select(l =>
                        (IReadOnlyList<string>)
                            [
                                $"{EnumWord.Of(l.Direction)} {QuantityText.Count(l.Number)}",
                                $"{QuantityText.Count(l.From)} to {QuantityText.Count(l.To)}",
                                l.Kind switch
                                {
                                    PatternKind.Dark => "darks",
                                    PatternKind.Level => "bias frames",
                                    _ => "flats",
                                },
                                $"{TableCell.Of(l.Excess)} {QuantityText.Unit(l.Excess.Unit)}",
                            ]
                    ),
            ],
            [0.2, 0.25, 0.2, 0.35]
        );
        if (pattern.Lines.Count > MaxLines)
            yield return new TextBlock($"The {MaxLines} clearest of {QuantityText.Count(pattern.Lines.Count)}.");
    }

    private static IEnumerable<Block> Boundaries(FixedPatternProfile pattern)
    {
        if (pattern.Boundaries.Count == 0)
            yield break;
        yield return new SubheadingBlock("Parts of the sensor with amplifiers of their own");
        yield return new TableBlock(
            ["Boundary", "Part", "What changes", "Step"],
            [
                .. pattern.Boundaries.Select(b =>
                    (IReadOnlyList<string>)
                        [
                            $"{(b.Direction == PatternDirection.Across ? "column" : "row")} {QuantityText.Count(b.Number)}",
                            b.Part,
                            b.Kind switch
                            {
                                PatternKind.Level => "bias level",
                                PatternKind.Noise => "read noise",
                                _ => "response",
                            },
                            $"{TableCell.Of(b.Step)} {QuantityText.Unit(b.Step.Unit)}",
                        ]
                ),
            ],
            [0.2, 0.25, 0.2, 0.35]
        );
    }
}
