using SensorProfile.Drift.OverTheYears;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Drawing;
using SensorProfile.Reporting.Plots.Years;

namespace SensorProfile.Reporting.Content.Years;

/// <summary>The measured pace of ageing beside published ones, and the methods.</summary>
internal static class DriftPaceSection
{
    /// <summary>The section; its plots are left out where the pace could not be measured.</summary>
    public static ReportSection Compose(DriftAnswer answer, FigureCounter figures)
    {
        List<Panel> panels = [];
        List<string> sources = [];
        if (DarkPerYear(answer) is { } dark)
            Add("Dark current of ordinary pixels", dark, PublishedAgeing.DarkCurrent);
        if (answer.HotPixels?.GrowthPerYear is { } hot)
            Add("Number of hot pixels", hot, PublishedAgeing.HotPixels);
        List<Block> blocks = [];
        if (panels.Count > 0)
        {
            blocks.Add(
                new FigureBlock(
                    figures.Next(),
                    "Growth per year of this camera (bar: 95 %) beside published paces. All published ones are for "
                        + "sensors in orbit, where radiation ages them: "
                        + "they are an upper bound for the ground, for which no pace with numbers was found "
                        + "published.",
                    panels
                )
                {
                    Table = "tables/ageing-pace.csv",
                }
            );
            blocks.Add(new SubheadingBlock("Sources of the published paces"));
            blocks.Add(new ListBlock(sources));
        }
        blocks.Add(new SubheadingBlock("Methods"));
        blocks.Add(new ListBlock(_methods));
        blocks.Add(new SubheadingBlock("Profiles compared"));
        blocks.Add(
            new ListBlock([.. answer.Compared, .. answer.Refused.Select(r => $"left out: {r.File}: {r.Reason}")])
        );
        return new ReportSection("The pace of ageing, and methods", null, blocks);

        void Add(string heading, Measurement own, IReadOnlyList<PublishedPace> published)
        {
            panels.Add(DriftPacePlot.Draw(heading, own, published));
            sources.AddRange(published.Select(p => $"{p.Label}: {p.Source}"));
        }
    }

    /// <summary>
    /// Growth of the dark current in % of its first value per year: from the trend, else from first and last; null when
    /// it could not be compared.
    /// </summary>
    public static Measurement? DarkPerYear(DriftAnswer answer)
    {
        foreach (string quantity in (string[])[QuantityNames.DarkRateByPixel, QuantityNames.DarkRate])
        {
            if (answer.Changes.FirstOrDefault(c => c.Quantity == quantity) is not { From.Value: > 0 } change)
                continue;
            double years = DriftTrendPlot.Year(answer.Dates[^1]) - DriftTrendPlot.Year(answer.Dates[0]);
            DriftTrend? trend = answer.Trends.FirstOrDefault(t => t.Quantity == quantity && t.Mode == change.Mode);
            if (trend is null && !(years > 0.05))
                continue;
            (double slope, double u) = trend is not null
                ? (trend.PerYear.Value, trend.PerYear.StandardUncertainty)
                : (change.Change.Value / years, change.Change.StandardUncertainty / years);
            return new Measurement(
                100 * slope / change.From.Value,
                100 * u / change.From.Value,
                "% per year",
                change.Change.Samples,
                "slope over the first value"
            );
        }
        return null;
    }

    private static readonly string[] _methods =
    [
        "Change: last minus first, over its joint uncertainty (GUM, JCGM 100:2008); what varies from night to "
            + "night, such as the black level and the temperature, is part of it.",
        "All comparisons of a report share one chance of a false alarm: S. Holm 1979, Scandinavian Journal of Statistics 6, 65.",
        "Dark current, pixel by pixel: the common scale of the ordinary pixels' pattern between two maps, in "
            + "which a jitter of the black level cancels; line with errors in both maps (W. E. Deming 1943, "
            + "Statistical Adjustment of Data; W. A. Fuller 1987, Measurement Error Models).",
        "Counts: J. Przyborowski and H. Wilenski 1940, Biometrika 31, 313. Patches: scan statistic, M. "
            + "Kulldorff 1997, Communications in Statistics, Theory and Methods 26, 1481.",
        "A drifted probe shifts all pixels by one step in temperature, hot ones too, each by its own "
            + "doubling temperature; ageing shifts only the ordinary ones.",
        "Uncertainties are standard uncertainties (one sigma); bars and bands in the plots are 95 % intervals. "
            + "Colours: M. Okabe and K. Ito 2008. Font: DejaVu Sans 2.37.",
    ];
}
