using System.Text;
using SensorProfile.Drift.MasterDarks;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Years;
using SensorProfile.Reporting.Html;
using SensorProfile.Reporting.Pdf;
using SensorProfile.Reporting.Tables;

namespace SensorProfile.Reporting;

/// <summary>
/// Writes the report of a check of master darks: <c>check.pdf</c>, <c>check.html</c> and <c>tables/masters.csv</c>.
/// </summary>
public static class DarkCheckReportWriter
{
    /// <summary>
    /// Writes the report into a folder, which is made when it is missing; files of the same names are replaced.
    /// </summary>
    /// <param name="answer">The check.</param>
    /// <param name="folder">The folder to write into.</param>
    /// <param name="date">Date that the documents carry: that of the fresh frames, so that the same frames give the
    /// same bytes.</param>
    /// <returns>The files written, in the order of the names.</returns>
    /// <exception cref="IOException">The disk is full, or the folder cannot be written to; the message says
    /// where.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder is read-only.</exception>
    public static IReadOnlyList<string> Write(DarkLibraryAnswer answer, string folder, DateTimeOffset date)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        ReportDocument report = DarkCheckContent.Build(answer, date);
        var files = new SortedDictionary<string, Action<Stream>>(StringComparer.Ordinal)
        {
            ["check.html"] = stream => stream.Write(Encoding.UTF8.GetBytes(HtmlReport.Text(report))),
            ["check.pdf"] = stream => stream.Write(PdfReport.Bytes(report)),
            ["tables/masters.csv"] = stream => CsvText.Write(Masters(answer), stream),
        };
        StagedFiles.Write(folder, files);
        return [.. files.Keys.Select(name => Path.Combine(folder, name))];
    }

    private static DataTable Masters(DarkLibraryAnswer answer) =>
        new(
            "masters",
            ["file", "verdict", "kind", "value", "uncertainty", "unit", "limit", "kind_verdict", "read_as", "reason"],
            [
                .. answer.Masters.SelectMany(m =>
                    m.Parts.Count == 0 ? [Row(answer, m, null)] : m.Parts.Select(p => Row(answer, m, p))
                ),
            ]
        );

    private static IReadOnlyList<object?> Row(DarkLibraryAnswer answer, MasterVerdict m, ResidualPart? p) =>
        [
            m.File,
            EnumWord.Of(m.Verdict),
            p is null ? null : EnumWord.Of(p.Kind),
            p?.Value.Value,
            p?.Value.StandardUncertainty,
            p?.Value.Unit,
            p?.Limit,
            p is null ? null : EnumWord.Of(p.Verdict),
            m.Scale,
            MasterWords.Reason(answer, m),
        ];
}
