using System.Globalization;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Years;

/// <summary>Puts a drift report together.</summary>
internal static class DriftContent
{
    /// <summary>The report of a comparison.</summary>
    /// <param name="answer">The comparison.</param> <param name="created">Date that the documents carry.</param>
    public static ReportDocument Build(DriftAnswer answer, DateTimeOffset created)
    {
        var figures = new FigureCounter();
        List<ReportSection> sections = [DriftVerdictSection.Compose(answer)];
        string[] modes = [.. answer.Changes.Select(c => c.Mode).Distinct()];
        foreach (string mode in modes)
        {
            string? label = modes.Length > 1 ? mode : null;
            if (answer.HotPixelModes.FirstOrDefault(h => h.Mode == mode) is { } hot)
                sections.Add(DriftPixelsSection.Compose(hot, label, figures));
            if (DriftYearsSection.Compose(answer, mode, label, figures) is { } years)
                sections.Add(years);
        }
        sections.Add(DriftPaceSection.Compose(answer, figures));
        return new ReportDocument(
            answer.Camera.Length > 0 ? answer.Camera : "Camera",
            Subtitle(answer),
            created,
            sections
        )
        {
            Kind = "drift report",
            Subject = "Changes of a camera sensor over the years with their significance",
        };
    }

    private static string Subtitle(DriftAnswer answer) =>
        answer.Dates.Count == 0
            ? "year over year"
            : "year over year · sessions of "
                + $"{string.Join(", ", answer.Dates.Select(d => d.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)))}";
}
