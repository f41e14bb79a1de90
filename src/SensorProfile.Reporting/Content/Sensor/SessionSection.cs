using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Frames and temperatures over time.</summary>
internal static class SessionSection
{
    /// <summary>The section, or null when the profile holds nothing about its session.</summary>
    public static ReportSection? Compose(FramesInfo frames, FigureCounter figures)
    {
        if (SessionPlot.Draw(frames) is not { } panel)
            return null;
        const string Caption =
            "Every frame that was measured: the temperature as it was read, and the median level "
            + "of the frames without light. "
            + "A pooled set should be level in temperature; a slope within a set is drift, a lone point a frame to look at.";
        var figure = new FigureBlock(figures.Next(), Caption, [panel]) { Table = "tables/session.csv" };
        return new ReportSection("Frames and temperatures over time", null, [figure, Kinds(frames)]);
    }

    private static TableBlock Kinds(FramesInfo frames) =>
        new(
            ["Kind", "Frames", "Exposures, s", "Temperatures, °C"],
            [
                .. frames
                    .Session.GroupBy(frame => frame.Kind)
                    .OrderBy(group => group.Key, StringComparer.Ordinal)
                    .Select(group =>
                        (IReadOnlyList<string>)
                            [
                                group.Key,
                                QuantityText.Count(group.Count()),
                                Range(group.Select(frame => frame.Exposure)),
                                Range(group.Select(frame => frame.Temperature)),
                            ]
                    ),
            ],
            [0.2, 0.15, 0.325, 0.325]
        )
        {
            FirstNumberColumn = 1,
        };

    private static string Range(IEnumerable<double?> values)
    {
        double[] known = [.. values.Where(value => value is not null).Select(value => value!.Value)];
        if (known.Length == 0)
            return "unknown";
        string low = QuantityText.Number(known.Min(), 3),
            high = QuantityText.Number(known.Max(), 3);
        return low == high ? low : $"{low} to {high}";
    }
}
