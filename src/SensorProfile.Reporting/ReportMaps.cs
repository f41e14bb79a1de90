using SensorProfile.Profiles;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting;

/// <summary>Pictures of the sensor for the report, where the maps still exist.</summary>
/// <param name="Pictures">In the order in which they are to appear.</param>
public sealed record ReportMaps(IReadOnlyList<MapPicture> Pictures)
{
    private static readonly (string Map, string Title, string Unit)[] _maps =
    [
        ("dark-rate", "Dark current of every pixel", "e-/px/s"),
        ("dark-rate-adu", "Dark current of every pixel", "ADU/px/s"),
        ("defects", "Defect pixels", ""),
        ("glow", "Amplifier glow", "e-/px/s"),
        ("read-noise", "Read noise of every pixel", "e-"),
    ];

    /// <summary>Maps that exist but could not be read.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>
    /// Reads the maps of a profile and reduces them to pictures of at most 400 columns or rows: each point is the mean
    /// of a square of pixels, or its brightest one where that is hot.
    /// </summary>
    /// <param name="folder">The folder <c>maps</c> that a characterisation wrote; nothing is read when it is
    /// missing.</param>
    /// <param name="profile">The profile, whose modes name the folders when there are several.</param>
    public static ReportMaps Read(string folder, CameraProfile profile)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        ArgumentNullException.ThrowIfNull(profile);
        var pictures = new List<MapPicture>();
        var findings = new List<Finding>();
        IReadOnlyList<string> modes = ModeLabel.Folders(profile.Modes);
        for (int mode = 0; mode < modes.Count; mode++)
        {
            foreach ((string map, string title, string unit) in _maps)
            {
                string path = Path.Combine(folder, modes.Count > 1 ? modes[mode] : "", map + ".fits");
                if (!File.Exists(path))
                    continue;
                try
                {
                    if (Picture(path, mode, map, title, unit, profile.Modes[mode]) is { } picture)
                        pictures.Add(picture with { Map = map });
                }
                catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
                {
                    findings.Add(
                        new Finding(
                            FindingCodes.MapUnreadable,
                            Severity.Warning,
                            $"A map cannot be shown: {problem.Message}",
                            [path]
                        )
                    );
                }
            }
        }
        return new ReportMaps(pictures) { Findings = findings };
    }

    private static MapPicture? Picture(
        string path,
        int mode,
        string map,
        string title,
        string unit,
        ModeProfile profile
    ) =>
        map switch
        {
            "defects" => DefectReduction.Reduce(path, mode, title),
            "dark-rate" or "dark-rate-adu" => MapReduction.Reduce(
                path,
                mode,
                title,
                unit,
                HotFrom(profile),
                logarithmic: true
            ),
            _ => MapReduction.Reduce(path, mode, title, unit),
        };

    /// <summary>Rate from which a pixel counts as hot, in the unit of the map.</summary>
    internal static double HotFrom(ModeProfile mode) =>
        mode.HotPixelsAdu is { } adu ? adu.HotRate + (mode.DarkCurrentAdu?.RateAtReference?.Value ?? 0)
        : mode.FixedPattern?.Thresholds is { HotRate: > 0 } thresholds
            ? thresholds.HotRate + (mode.DarkCurrent?.RateAtReference?.Value ?? 0)
        : double.PositiveInfinity;
}
