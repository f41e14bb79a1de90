using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Tables;

/// <summary>The tables that are about the session as a whole.</summary>
internal static class SessionTables
{
    /// <summary>Frames, files left out, findings.</summary>
    public static IEnumerable<DataTable> Of(CameraProfile profile)
    {
        DataTable[] tables =
        [
            new(
                "session",
                ["file", "kind", "exposure_s", "temperature_c", "start_utc", "level_adu", "mode"],
                [
                    .. profile.Frames.Session.Select(frame =>
                        (IReadOnlyList<object?>)
                            [
                                frame.File,
                                frame.Kind,
                                frame.Exposure,
                                frame.Temperature,
                                frame.StartUtc,
                                frame.Level,
                                frame.Mode,
                            ]
                    ),
                ]
            ),
            new(
                "rejected",
                ["file", "reason"],
                [.. profile.Frames.Rejected.Select(file => (IReadOnlyList<object?>)[file.File, file.Reason])]
            ),
            new(
                "findings",
                ["code", "severity", "message", "frames"],
                [
                    .. profile.Findings.Select(finding =>
                        (IReadOnlyList<object?>)
                            [
                                finding.Code,
                                finding.Severity.ToString().ToLowerInvariant(),
                                finding.Message,
                                string.Join("; ", finding.Frames),
                            ]
                    ),
                ]
            ),
        ];
        return tables.Where(table => table.Rows.Count > 0);
    }
}
