using SensorProfile.Profiles;
using SensorProfile.Reporting.Plots;

namespace SensorProfile.Reporting.Content;

/// <summary>Defect pixels, glow and structure.</summary>
internal static class PatternSection
{
    /// <summary>The section.</summary>
    /// <param name="context">The mode.</param>
    /// <param name="pictures">Pictures of its sensor.</param>
    public static ReportSection Of(ModeContext context, IReadOnlyList<MapPicture> pictures)
    {
        const string Title = "Hot pixels, glow and structure";
        FixedPatternProfile? pattern = context.Mode.FixedPattern;
        if (pattern is null)
        {
            return new ReportSection(Title, context.Label,
                [.. context.Absent("Defect pixels and glow were not measured: they need darks at three or more exposures at one temperature.", "defect", "hot", "glow", "pattern", "dark")]);
        }
        var blocks = new List<Block>();
        if (HotPixelPlot.Counts(pattern) is { } counts)
            blocks.Add(context.Figure(counts, "How many pixels are hot depends on where one draws the line: the number above each rate, with its counting interval of 95 %.", "hot-pixels"));
        if (pattern.Defects is { } defects)
            blocks.Add(Defects(defects, pattern));
        if (HotPixelPlot.Doubling(pattern) is { } doubling)
            blocks.Add(context.Figure(doubling, "Hot pixels need not double as the typical pixel does. Doubling temperature by class of rate: bars are of 95 %, the broad strokes are the spread from pixel to pixel.", "doubling-by-rate"));
        blocks.AddRange(Glow(pattern));
        blocks.AddRange(Structure(pattern));
        blocks.AddRange(Thermometer(pattern));
        blocks.AddRange(PredictionBlocks.Of(pattern));
        blocks.AddRange(pictures.Select(picture => new PictureBlock(context.Figures.Next(), $"{picture.Title}, from {QuantityText.Number(picture.Low, 2)} (dark) to {QuantityText.Number(picture.High, 2)} {QuantityText.Unit(picture.Unit)} (bright); the first row of the file is at the top, blue is not measured.", picture)));
        if (blocks.Count == 0)
            blocks.Add(new TextBlock("No defect was looked for in this profile."));
        return new ReportSection(Title, context.Label, blocks);
    }

    private static TableBlock Defects(DefectCounts counts, FixedPatternProfile pattern)
    {
        DefectThresholds? limits = pattern.Thresholds;
        string at = pattern.ReferenceTemperature is { } temperature ? $" at {QuantityText.Number(temperature)} °C" : "";
        string Rate(double? rate) => rate is null ? "" : $"more than {QuantityText.Number(rate.Value)} e⁻/px/s above the typical pixel{at}";
        (string Kind, long Count, string Meaning)[] rows =
        [
            ("hot", counts.Hot, $"{Rate(limits?.HotRate)}{(limits is null ? "" : $", and {QuantityText.Number(limits.Significance)} of its own standard errors")}"),
            ("warm", counts.Warm, Rate(limits?.WarmRate)),
            ("cold", counts.Cold, "far below its neighbours"),
            ("dead", counts.Dead, limits is null ? "no response" : $"response below {QuantityText.Number(100 * limits.DeadResponse)} % of its neighbours"),
            ("saturated", counts.Saturated, "at the top code in the longest dark"),
            ("not linear", counts.NonLinear, "its rate depends on the exposure"),
            ("flickering", counts.Flickering, FlickerWords.Meaning(counts, limits)),
            ("columns", counts.Columns, "whole columns that stand out"),
            ("rows", counts.Rows, "whole rows that stand out"),
            ("clusters", counts.Clusters, "three or more hot pixels that touch"),
        ];
        return new TableBlock(["Kind", "Count", "What it means"], [.. rows.Select(row => (IReadOnlyList<string>)[row.Kind, QuantityText.Count(row.Count), row.Meaning])],
            [0.16, 0.14, 0.7]) { FirstNumberColumn = 1, LastNumberColumn = 1 };
    }

    private static IEnumerable<Block> Glow(FixedPatternProfile pattern)
    {
        yield return new SubheadingBlock("Amplifier glow");
        if (pattern.Glow.Count == 0)
        {
            yield return new TextBlock("No glow was found above the typical floor of the sensor.");
            yield break;
        }
        yield return new TableBlock(["Where", "Column, row", "Peak, e⁻/px/s", "Share of the sensor", "Exposure, power", "Doubling, °C"],
            [.. pattern.Glow.Select(glow => (IReadOnlyList<string>)
                [glow.Where, $"{glow.X}, {glow.Y}", Bare(glow.Peak), $"{QuantityText.Number(100 * glow.AreaShare, 2)} % above {QuantityText.Number(glow.AreaThreshold, 2)}",
                 Bare(glow.ExposureExponent), Bare(glow.DoublingTemperature)])],
            [0.2, 0.14, 0.18, 0.2, 0.15, 0.13]) { FirstNumberColumn = 1 };
    }

    private static IEnumerable<Block> Structure(FixedPatternProfile pattern)
    {
        if (pattern.Structure is not { Total: { } total } structure) yield break;
        string unit = QuantityText.Unit(total.Unit);
        yield return new SubheadingBlock("Structure of the bias level");
        yield return new TableBlock(["Part", $"Standard deviation, {unit}"],
            [["all pixels", Bare(total)], ["common to rows", Bare(structure.Row)], ["common to columns", Bare(structure.Column)], ["single pixels", Bare(structure.Pixel)]],
            [0.5, 0.5]) { FirstNumberColumn = 1 };
        string[] periods = [.. structure.Periods.Select(p => $"every {QuantityText.Number(p.Period, 3)} px {(p.Direction == "across" ? "from column to column" : "from row to row")} ({QuantityText.Number(p.Amplitude, 2)} ADU)")];
        yield return new TextBlock(periods.Length == 0 ? "The spectra along rows and columns show no regular pattern."
            : $"Regular patterns stand out of the spectra: {string.Join("; ", periods)}. Subtracting a master bias or dark removes them, because they are the same in every frame.");
    }

    private static IEnumerable<Block> Thermometer(FixedPatternProfile pattern)
    {
        if (pattern.Thermometer.Count == 0) yield break;
        yield return new SubheadingBlock("Hot pixels as a thermometer");
        yield return new TextBlock("All hot pixels brighten together when the die warms, whatever its probe says. Difference: temperature of a set by its hot pixels minus its readings, against the longest exposure at the same temperature. Drift: from the first to the last frame.");
        yield return new TableBlock(["Reading, °C", "Exposure, s", "Frames", "Difference, °C", "Drift, °C", "Drift of the probe, °C"],
            [.. pattern.Thermometer.Select(t => (IReadOnlyList<string>)
                [QuantityText.Number(t.Reading, 0.1), QuantityText.Number(t.Exposure), QuantityText.Count(t.Frames), Bare(t.Difference), Bare(t.Drift), t.ReadingDrift is { } drift ? QuantityText.Number(drift, 0.05) : "–"])],
            [0.16, 0.16, 0.12, 0.19, 0.18, 0.19]) { FirstNumberColumn = 0 };
    }

    private static string Bare(Measurement? quantity) => quantity is null ? "–" : QuantityText.Number(quantity.Value, quantity.StandardUncertainty);
}
