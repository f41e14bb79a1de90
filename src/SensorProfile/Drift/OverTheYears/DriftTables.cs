using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Frames;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Writes a comparison as CSV tables: RFC 4180, invariant numbers.</summary>
internal static class DriftTables
{
    private static readonly CsvConfiguration Format = new(CultureInfo.InvariantCulture) { NewLine = "\r\n" };

    /// <summary>First against last profile, then the slopes per year, one line each.</summary>
    /// <param name="answer">The comparison.</param>
    /// <param name="writer">Target.</param>
    public static void WriteChanges(DriftAnswer answer, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        using var csv = new CsvWriter(writer, Format, leaveOpen: true);
        Row(
            csv,
            "kind",
            "quantity",
            "mode",
            "unit",
            "from",
            "from_uncertainty",
            "to",
            "to_uncertainty",
            "change",
            "change_uncertainty",
            "z",
            "p",
            "adjusted_p",
            "changed"
        );
        foreach (DriftChange c in answer.Changes)
            Row(
                csv,
                "change",
                c.Quantity,
                c.Mode,
                c.To.Unit,
                c.From.Value,
                c.From.StandardUncertainty,
                c.To.Value,
                c.To.StandardUncertainty,
                c.Change.Value,
                c.Change.StandardUncertainty,
                c.Z,
                c.P,
                c.AdjustedP,
                c.Changed ? "yes" : "no"
            );
        foreach (DriftTrend t in answer.Trends)
            Row(
                csv,
                "per year",
                t.Quantity,
                t.Mode,
                t.PerYear.Unit,
                "",
                "",
                "",
                "",
                t.PerYear.Value,
                t.PerYear.StandardUncertainty,
                t.Z,
                t.P,
                t.AdjustedP,
                t.Changed ? "yes" : "no"
            );
    }

    /// <summary>Every hot pixel that changed.</summary>
    /// <param name="answer">The comparison.</param>
    /// <param name="writer">Target.</param>
    public static void WritePixels(DriftAnswer answer, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        using var csv = new CsvWriter(writer, Format, leaveOpen: true);
        Row(csv, "mode", "x", "y", "change", "from", "from_uncertainty", "to", "to_uncertainty", "z");
        foreach (HotPixelDrift mode in answer.HotPixelModes)
        foreach (HotPixelChange p in mode.Pixels)
            Row(
                csv,
                mode.Mode,
                p.X,
                p.Y,
                p.Change.ToString().ToLowerInvariant(),
                p.From.Value,
                p.From.StandardUncertainty,
                p.To.Value,
                p.To.StandardUncertainty,
                p.Z
            );
    }

    private static void Row(CsvWriter csv, params IEnumerable<object> cells)
    {
        foreach (object cell in cells)
            csv.WriteField(
                cell switch
                {
                    string text => FileNames.ToCell(text),
                    double number when !double.IsFinite(number) => "",
                    _ => cell,
                }
            );
        csv.NextRecord();
    }
}
