using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Defect pixels, glow and structure.</summary>
internal static class PatternSection
{
    /// <summary>The section.</summary>
    /// <param name="context">The mode.</param>
    /// <param name="pictures">Pictures of its sensor.</param>
    public static ReportSection Compose(ModeContext context, IReadOnlyList<MapPicture> pictures)
    {
        const string Title = "Hot pixels, glow and structure";
        FixedPatternProfile? pattern = context.Mode.FixedPattern;
        if (pattern is null)
        {
            return new ReportSection(
                Title,
                context.Label,
                [
                    .. context.Absent(
                        "Defect pixels and glow were not measured: they need darks at three or more exposures at one temperature.",
                        FindingsBehind.Defects
                    ),
                ]
            );
        }
        var blocks = new List<Block>();
        if (HotPixelPlot.Counts(pattern) is { } counts)
            blocks.Add(
                context.Figure(
                    counts,
                    "How many pixels are hot depends on where you draw the line: the number above each rate, with "
                        + "its 95 % counting interval.",
                    "hot-pixels"
                )
            );
        if (HotPixelCurvesPlot.Draw(pattern) is { } curves)
            blocks.Add(
                context.Figure(
                    curves,
                    "The same at every measured temperature, each pixel following its own temperature law: cooling moves the "
                        + "curve to the left. Bands: 95 % counting intervals.",
                    "hot-pixels-by-temperature"
                )
            );
        if (pattern.Defects is { } defects)
            blocks.Add(Defects(defects, pattern));
        if (HotPixelPlot.Doubling(pattern) is { } doubling)
            blocks.Add(
                context.Figure(
                    doubling,
                    "Hot pixels need not double as the typical pixel does. Doubling temperature by class of rate: "
                        + "bars: 95 %; broad strokes: the spread from pixel to pixel.",
                    "doubling-by-rate"
                )
            );
        blocks.AddRange(GlowBlocks.Compose(context, pattern, pictures));
        blocks.AddRange(StructureBlocks.Compose(context, pattern));
        blocks.AddRange(ResponseBlocks.Compose(pattern));
        blocks.AddRange(PredictionBlocks.Compose(pattern));
        if (blocks.Count == 0)
            blocks.Add(new TextBlock("No search for defects was made for this profile."));
        return new ReportSection(Title, context.Label, blocks);
    }

    private static TableBlock Defects(DefectCounts counts, FixedPatternProfile pattern)
    {
        DefectThresholds? limits = pattern.Thresholds;
        string at = pattern.ReferenceTemperature is { } temperature ? $" at {QuantityText.Degrees(temperature)}" : "";
        string Rate(double? rate) =>
            rate is null ? "" : $"more than {QuantityText.Number(rate.Value)} e⁻/px/s above the typical pixel{at}";
        (string Kind, long Count, string Meaning)[] rows =
        [
            (
                "hot",
                counts.Hot,
                Rate(limits?.HotRate)
                    + (
                        limits is null
                            ? ""
                            : $", and {QuantityText.Number(limits.Significance)} of its own standard errors"
                    )
            ),
            ("warm", counts.Warm, Rate(limits?.WarmRate)),
            (
                "cold",
                counts.Cold,
                limits is null
                    ? "far below its neighbours"
                    : $"dark rate below {QuantityText.Number(100 * limits.ColdShare)} % of the typical pixel's, or "
                        + $"response to light below {QuantityText.Number(100 * limits.DeadResponse)} % of its "
                        + "neighbours'"
            ),
            (
                "dead",
                counts.Dead,
                limits is null
                    ? "no response to light"
                    : $"response to light below {QuantityText.Number(100 * limits.NoResponse)} % of its neighbours'"
            ),
            ("saturated", counts.Saturated, "at the top code in the longest dark"),
            ("not linear", counts.NonLinear, "its rate depends on the exposure"),
            ("flickering", counts.Flickering, FlickerWords.Meaning(counts, limits)),
            ("columns", counts.Columns, "whole columns that stand out"),
            ("rows", counts.Rows, "whole rows that stand out"),
            ("clusters", counts.Clusters, "three or more hot pixels that touch"),
        ];
        return new TableBlock(
            ["Kind", "Count", "What it means"],
            [.. rows.Select(row => (IReadOnlyList<string>)[row.Kind, QuantityText.Count(row.Count), row.Meaning])],
            [0.16, 0.14, 0.7]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 1,
        };
    }
}
