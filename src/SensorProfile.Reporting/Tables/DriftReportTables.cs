using System.Globalization;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Reporting.Answers.Years;
using SensorProfile.Reporting.Content.Years;
using SensorProfile.Reporting.Plots.Drawing;

namespace SensorProfile.Reporting.Tables;

/// <summary>The numbers behind the plots of a drift report.</summary>
internal static class DriftReportTables
{
    /// <summary>The tables.</summary>
    public static IEnumerable<DataTable> Of(DriftAnswer answer)
    {
        yield return new DataTable(
            "drift-points",
            ["mode", "quantity", "kind", "date", "unit", "value", "uncertainty", "low_95", "high_95"],
            [.. Points(answer)]
        );
        yield return new DataTable(
            "ageing-pace",
            ["what", "of", "low_percent_per_year", "high_percent_per_year", "source"],
            [.. Pace(answer)]
        );
        yield return new DataTable(
            "patches",
            ["mode", "x", "y", "radius_px", "new", "expected", "p", "where", "outline"],
            [
                .. answer.HotPixelModes.SelectMany(h =>
                    h.Patches.Select(p =>
                        (IReadOnlyList<object?>)
                            [
                                h.Mode,
                                p.X,
                                p.Y,
                                p.Radius,
                                p.NewPixels,
                                p.Expected,
                                p.P,
                                p.Where,
                                string.Join(
                                    ' ',
                                    p.Outline.Select(q => string.Create(CultureInfo.InvariantCulture, $"{q.X},{q.Y}"))
                                ),
                            ]
                    )
                ),
            ]
        );
        yield return new DataTable(
            "library",
            ["mode", "cause", "date", "earliest", "latest", "sentence"],
            [
                .. answer.Library.Select(l =>
                    (IReadOnlyList<object?>)
                        [
                            l.Mode,
                            l.Cause is { } cause ? EnumWord.Of(cause) : null,
                            Date(l.DateUtc),
                            Date(l.EarliestUtc),
                            Date(l.LatestUtc),
                            LibraryWords.Phrase(l),
                        ]
                ),
            ]
        );
    }

    private static IEnumerable<IReadOnlyList<object?>> Points(DriftAnswer answer)
    {
        foreach (DriftTrend t in answer.Trends)
        {
            foreach (TrendPoint p in t.Points)
                yield return
                [
                    t.Mode,
                    t.Quantity,
                    "measured",
                    Date(p.DateUtc),
                    p.Value.Unit,
                    p.Value.Value,
                    p.Value.StandardUncertainty,
                    null,
                    null,
                ];
            foreach (ForecastPoint p in t.Forecast)
                yield return
                [
                    t.Mode,
                    t.Quantity,
                    p.Beyond ? "forecast" : "line",
                    Date(p.DateUtc),
                    t.Points[^1].Value.Unit,
                    p.Value,
                    null,
                    p.Low,
                    p.High,
                ];
        }
        foreach (
            DriftChange c in answer.Changes.Where(c =>
                !answer.Trends.Any(t => t.Quantity == c.Quantity && t.Mode == c.Mode)
            )
        )
        {
            yield return
            [
                c.Mode,
                c.Quantity,
                "measured",
                Date(answer.Dates[0]),
                c.From.Unit,
                c.From.Value,
                c.From.StandardUncertainty,
                null,
                null,
            ];
            yield return
            [
                c.Mode,
                c.Quantity,
                "measured",
                Date(answer.Dates[^1]),
                c.To.Unit,
                c.To.Value,
                c.To.StandardUncertainty,
                null,
                null,
            ];
        }
    }

    private static IEnumerable<IReadOnlyList<object?>> Pace(DriftAnswer answer)
    {
        if (DriftPaceSection.DarkPerYear(answer) is { } dark)
            yield return Own("dark current", dark);
        foreach (PublishedPace p in PublishedAgeing.DarkCurrent)
            yield return ["dark current", p.Label, p.Low, p.High, p.Source];
        if (answer.HotPixels?.GrowthPerYear is { } hot)
            yield return Own("hot pixels", hot);
        foreach (PublishedPace p in PublishedAgeing.HotPixels)
            yield return ["hot pixels", p.Label, p.Low, p.High, p.Source];
    }

    private static IReadOnlyList<object?> Own(string what, Measurement m) =>
        [
            what,
            "this camera",
            m.Value - PlotBase.BarFactor * m.StandardUncertainty,
            m.Value + PlotBase.BarFactor * m.StandardUncertainty,
            "measured here, 95 %",
        ];

    private static string? Date(DateTimeOffset? date) =>
        date?.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
