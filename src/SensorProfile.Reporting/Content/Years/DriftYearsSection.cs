using System.Globalization;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Years;

namespace SensorProfile.Reporting.Content.Years;

/// <summary>Every quantity over the years as small plots, and the table of first against last.</summary>
internal static class DriftYearsSection
{
    private static readonly string[] _order =
    [
        QuantityNames.DarkRateByPixel,
        QuantityNames.DarkRate,
        QuantityNames.DoublingTemperature,
        QuantityNames.GlowTotal,
        QuantityNames.HotPixelsAboveRate(0.1),
        QuantityNames.HotPixelsAboveRate(1),
        QuantityNames.ReadNoise,
        QuantityNames.Gain,
        QuantityNames.FullWell,
        QuantityNames.BiasLevel,
    ];

    /// <summary>The section of one mode; null when nothing of it was compared.</summary>
    public static ReportSection? Compose(DriftAnswer answer, string mode, string? label, FigureCounter figures)
    {
        DriftChange[] changes = [.. answer.Changes.Where(c => c.Mode == mode).OrderBy(c => Rank(c.Quantity))];
        if (changes.Length == 0)
            return null;
        Panel[] panels =
        [
            .. changes
                .Where(c => c.Quantity is not (QuantityNames.NewLessHealed or QuantityNames.GrowingPatch))
                .Select(c => Panel(answer, c)),
        ];
        List<Block> blocks = [];
        if (panels.Length > 0)
            blocks.Add(
                new FigureBlock(
                    figures.Next(),
                    "Each quantity over the years; bars are 95 % intervals and include what varies from night to "
                        + "night. "
                        + (
                            answer.Trends.Count > 0
                                ? "The line is the weighted straight line through the years with its 95 % band; dashed, it "
                                    + "extrapolates by a third of the time measured. A “*” in a heading marks what changed beyond "
                                    + "the errors."
                                : "From three dates on, a line is drawn through them. A “*” in a heading marks what changed "
                                    + "beyond the errors."
                        ),
                    panels
                )
                {
                    Columns = 2,
                    Table = "tables/drift-points.csv",
                }
            );
        blocks.Add(new SubheadingBlock("First against last"));
        blocks.Add(Table(answer, changes));
        blocks.Add(
            new TextBlock(
                "z: the change in standard uncertainties. p: the chance of so large a change when nothing changed, "
                    + "all comparisons of this report taken together (Holm). "
                    + "Least seen: the smallest change that four of five such comparisons would have found."
            )
        );
        return new ReportSection("Over the years", label, blocks);
    }

    private static Panel Panel(DriftAnswer answer, DriftChange change)
    {
        DriftTrend? trend = answer.Trends.FirstOrDefault(t => t.Quantity == change.Quantity && t.Mode == change.Mode);
        string heading =
            QuantityWords.Heading(change.Quantity) + (change.Changed || trend is { Changed: true } ? " *" : "");
        return trend is null
            ? DriftTrendPlot.Draw(heading, change, answer.Dates[0], answer.Dates[^1])
            : DriftTrendPlot.Draw(heading, trend);
    }

    private static TableBlock Table(DriftAnswer answer, DriftChange[] changes) =>
        new(
            ["Quantity", First(answer.Dates[0]), First(answer.Dates[^1]), "Change", "Least seen", "z", "p", "Changed"],
            [
                .. changes.Select(c =>
                    (IReadOnlyList<string>)
                        [
                            Labelled(c),
                            Bare(c.From),
                            Bare(c.To),
                            Share(c, c.Change.Value, signed: true),
                            IsOfPixels(c) ? "–" : Share(c, c.Detectable, signed: false),
                            c.Z.ToString("0.0", CultureInfo.InvariantCulture).Replace('-', '−'),
                            P(c.AdjustedP),
                            c.Changed ? "yes" : "no",
                        ]
                ),
            ],
            [0.177, 0.195, 0.195, 0.097, 0.084, 0.07, 0.084, 0.098]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 6,
        };

    private static bool IsOfPixels(DriftChange c) =>
        c.Quantity is QuantityNames.NewLessHealed or QuantityNames.GrowingPatch;

    /// <summary>A change as a share of the first value, or in the quantity's own unit where a share would be meaningless.</summary>
    private static string Share(DriftChange c, double change, bool signed)
    {
        double share = c.From.Value != 0 ? 100 * change / Math.Abs(c.From.Value) : double.NaN;
        string sign = signed && change > 0 ? "+" : "";
        return IsOfPixels(c) || !(Math.Abs(share) < 1000)
            ? sign + QuantityText.Number(change, 3)
            : $"{sign}{QuantityText.Number(share, 2)} %";
    }

    private static string Labelled(DriftChange c) =>
        c.Quantity switch
        {
            QuantityNames.NewLessHealed => "Healed, and new, hot pixels, px",
            QuantityNames.GrowingPatch => "New ones in the patch: by chance, and found, px",
            _ when c.To.Unit != "px" && QuantityText.Unit(c.To.Unit) is { Length: > 0 } unit =>
                $"{QuantityWords.Heading(c.Quantity)}, {unit}",
            _ => QuantityWords.Heading(c.Quantity),
        };

    private static string P(double p) =>
        p < 0.0005 ? "< 0.001"
        : p > 0.995 ? "1"
        : QuantityText.Number(p, 2);

    private static string First(DateTimeOffset date) =>
        date.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture);

    private static string Bare(Measurement m) => QuantityText.Number(m.Value, m.StandardUncertainty);

    private static int Rank(string quantity) => Array.IndexOf(_order, quantity) is >= 0 and var at ? at : _order.Length;
}
