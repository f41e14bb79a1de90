using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Years;

namespace SensorProfile.Reporting.Content.Years;

/// <summary>The hot pixels of the first and the last year, matched one by one.</summary>
internal static class DriftPixelsSection
{
    /// <summary>The section of one mode.</summary>
    public static ReportSection Compose(HotPixelDrift hot, string? label, FigureCounter figures)
    {
        string thinned =
            hot.Unchanged.Count > DriftMapPlot.MaxShown || hot.New > DriftMapPlot.MaxShown
                ? " Where there are very many, an even sample of them is drawn."
                : "";
        string outline =
            hot.Patches.Count > 0 ? " The outline holds new pixels closer together than chance allows." : "";
        List<Block> blocks =
        [
            new FigureBlock(
                figures.Next(),
                $"Pixels with more than {QuantityText.Number(hot.Threshold)} e⁻/px/s above the typical pixel. New "
                    + "and healed are those whose change is beyond the noise of both sessions; "
                    + "the factor common to all hot pixels is taken out "
                    + $"first.{thinned}{outline}",
                [DriftMapPlot.Draw(hot)]
            )
            {
                Table = "tables/hot-pixel-changes.csv",
            },
            new TableBlock(
                ["Hot pixels", "Pixels", "Per year and million pixels"],
                [
                    ["kept (those below among them)", QuantityText.Count(hot.Kept), "–"],
                    ["   brighter", QuantityText.Count(hot.Brighter), "–"],
                    ["   fainter", QuantityText.Count(hot.Fainter), "–"],
                    ["new", QuantityText.Count(hot.New), Rate(hot.NewPerYear)],
                    ["healed", QuantityText.Count(hot.Healed), Rate(hot.HealedPerYear)],
                    ["left out: flickering", QuantityText.Count(hot.Flickering), "–"],
                ],
                [0.5, 0.2, 0.3]
            )
            {
                FirstNumberColumn = 1,
            },
        ];
        if (hot.Patches.Count > 0)
        {
            blocks.Add(new SubheadingBlock("Patches that grow"));
            blocks.Add(
                new TableBlock(
                    ["Where", "Centre, column and row", "Radius, px", "New", "By chance", "p"],
                    [
                        .. hot.Patches.Select(p =>
                            (IReadOnlyList<string>)
                                [
                                    p.Where,
                                    $"{QuantityText.Number(Math.Round(p.X))}, {QuantityText.Number(Math.Round(p.Y))}",
                                    QuantityText.Number(Math.Round(p.Radius)),
                                    QuantityText.Count(p.NewPixels),
                                    QuantityText.Number(p.Expected, 2),
                                    p.P < 0.0005 ? "< 0.001" : QuantityText.Number(p.P, 2),
                                ]
                        ),
                    ],
                    [0.32, 0.22, 0.13, 0.1, 0.12, 0.11]
                )
                {
                    FirstNumberColumn = 1,
                }
            );
            blocks.Add(
                new TextBlock(
                    "A patch comes from one cause at one place, such as a defect of the wafer that spreads or "
                        + "something on the window: dithering by less than its radius does not spread it, so new darks must contain "
                        + "it."
                )
            );
        }
        return new ReportSection("Hot pixels, one by one", label, blocks);
    }

    private static string Rate(Measurement? rate) =>
        rate is null ? "–" : QuantityText.Number(rate.Value, rate.StandardUncertainty);
}
