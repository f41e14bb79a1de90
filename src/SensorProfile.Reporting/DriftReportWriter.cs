using System.Text;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Years;
using SensorProfile.Reporting.Html;
using SensorProfile.Reporting.Pdf;
using SensorProfile.Reporting.Tables;

namespace SensorProfile.Reporting;

/// <summary>
/// Writes the report of a comparison over the years: <c>drift.pdf</c>, <c>drift.html</c> and <c>tables/*.csv</c>.
/// </summary>
/// <remarks>
/// The same comparison gives the same bytes, on every machine, in every culture, with or without fonts installed.
/// </remarks>
public static class DriftReportWriter
{
    /// <summary>
    /// Writes the report into a folder, which is made when it is missing; files of the same names are replaced.
    /// </summary>
    /// <param name="answer">The comparison.</param>
    /// <param name="folder">The folder to write into.</param>
    /// <returns>The files written, in the order of the names.</returns>
    /// <exception cref="IOException">The disk is full, or the folder cannot be written to; the message says
    /// where.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder is read-only.</exception>
    public static IReadOnlyList<string> Write(DriftAnswer answer, string folder)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        // dated by the last session, so that the same input gives the same bytes
        DateTimeOffset created = answer.Dates.Count > 0 ? answer.Dates[^1] : DateTimeOffset.UnixEpoch;
        ReportDocument report = DriftContent.Build(answer, created);
        var files = new SortedDictionary<string, Action<Stream>>(StringComparer.Ordinal)
        {
            ["drift.html"] = stream => stream.Write(Encoding.UTF8.GetBytes(HtmlReport.Text(report))),
            ["drift.pdf"] = stream => stream.Write(PdfReport.Bytes(report)),
            ["tables/drift.csv"] = stream => Text(stream, writer => DriftTables.WriteChanges(answer, writer)),
            ["tables/hot-pixel-changes.csv"] = stream =>
                Text(stream, writer => DriftTables.WritePixels(answer, writer)),
        };
        foreach (DataTable table in DriftReportTables.Of(answer))
            files[$"tables/{table.Name}.csv"] = stream => CsvText.Write(table, stream);
        StagedFiles.Write(folder, files);
        return [.. files.Keys.Select(name => Path.Combine(folder, name))];
    }

    private static void Text(Stream stream, Action<TextWriter> write)
    {
        using var writer = new StreamWriter(
            stream,
            new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            leaveOpen: true
        );
        write(writer);
    }
}
