using System.Text;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Html;
using SensorProfile.Reporting.Pdf;
using SensorProfile.Reporting.Tables;

namespace SensorProfile.Reporting;

/// <summary>
/// Writes the report of a profile: <c>report.pdf</c>, <c>report.html</c>, <c>card.pdf</c>, <c>card.html</c> and
/// <c>tables/*.csv</c>.
/// </summary>
/// <remarks>
/// The same profile gives the same bytes, on every machine, in every culture, with or without fonts installed.
/// </remarks>
public static class ReportWriter
{
    /// <summary>
    /// Writes the report into a folder, which is made when it is missing; files of the same names are replaced.
    /// </summary>
    /// <param name="profile">What was measured.</param>
    /// <param name="folder">The folder to write into.</param>
    /// <param name="options">What the report may contain beyond the profile.</param>
    /// <returns>The files written, in the order of the names.</returns>
    /// <remarks>
    /// Everything is first written beside its final place; a report that cannot be finished leaves what was there
    /// before.
    /// </remarks>
    /// <exception cref="IOException">The disk is full, or the folder cannot be written to; the message says
    /// where.</exception>
    /// <exception cref="DecisionRefusedException">The scale of smooth residuals makes no sense.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder is read-only.</exception>
    public static IReadOnlyList<string> Write(CameraProfile profile, string folder, ReportOptions options)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        ArgumentNullException.ThrowIfNull(options);
        new LossLimits { SmoothPixels = options.SmoothPixels }.Check();
        NightAnswers[] nights =
        [
            .. profile.Modes.Select(mode => NightAnswers.Ask(profile, mode, options.SmoothPixels)),
        ];
        ReportDocument report = ReportContent.Build(profile, options.Maps, nights),
            card = CardContent.Build(profile, nights);
        var files = new SortedDictionary<string, Action<Stream>>(StringComparer.Ordinal)
        {
            ["card.html"] = stream => stream.Write(Encoding.UTF8.GetBytes(HtmlReport.Text(card))),
            ["card.pdf"] = stream => stream.Write(PdfReport.Bytes(card, PageSize.A6)),
            ["report.html"] = stream => stream.Write(Encoding.UTF8.GetBytes(HtmlReport.Text(report))),
            ["report.pdf"] = stream => stream.Write(PdfReport.Bytes(report)),
        };
        foreach ((string name, DataTable table) in Tables(profile, nights))
            files[name] = stream => CsvText.Write(table, stream);
        StagedFiles.Write(folder, files);
        return [.. files.Keys.Select(name => Path.Combine(folder, name))];
    }

    private static IEnumerable<(string Name, DataTable Table)> Tables(CameraProfile profile, NightAnswers[] nights)
    {
        foreach (DataTable table in SessionTables.Of(profile))
            yield return ($"tables/{table.Name}.csv", table);
        IReadOnlyList<string> folders = ModeLabel.Folders(profile.Modes);
        for (int i = 0; i < profile.Modes.Count; i++)
        {
            string folder = profile.Modes.Count > 1 ? folders[i] + "/" : "";
            foreach (DataTable table in ModeTables.Of(profile.Modes[i]).Concat(DecisionCurves.Of(nights[i])))
                yield return ($"tables/{folder}{table.Name}.csv", table);
        }
    }
}
