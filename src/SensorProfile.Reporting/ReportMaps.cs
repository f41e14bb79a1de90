using SensorProfile.Profiles;
using SensorProfile.Reporting.Drawing;

namespace SensorProfile.Reporting;

/// <summary>Pictures of the sensor for the report, where the maps still exist.</summary>
/// <param name="Pictures">In the order in which they are to appear.</param>
public sealed record ReportMaps(IReadOnlyList<MapPicture> Pictures)
{
    private static readonly (string File, string Title, string Unit)[] _maps =
    [
        ("dark-rate.fits", "Dark current of every pixel", "e-/px/s"),
        ("glow.fits", "Amplifier glow", "e-/px/s"),
        ("read-noise.fits", "Read noise of every pixel", "e-"),
        ("doubling.fits", "Doubling temperature of every pixel", "°C"),
    ];

    /// <summary>Maps that are there and could not be read.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Reads the maps of a profile and reduces them to pictures of at most 400 columns or rows, each the mean of a square of pixels.</summary>
    /// <param name="folder">The folder <c>maps</c> that a characterisation wrote; nothing is read when it is missing.</param>
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
            foreach ((string file, string title, string unit) in _maps)
            {
                string path = Path.Combine(folder, modes.Count > 1 ? modes[mode] : "", file);
                if (!File.Exists(path))
                    continue;
                try
                {
                    if (MapReduction.Of(path, mode, title, unit) is { } picture)
                        pictures.Add(picture);
                }
                catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
                {
                    findings.Add(new Finding("map-unreadable", Severity.Warning, $"A map cannot be shown: {problem.Message}", [path]));
                }
            }
        }
        return new ReportMaps(pictures) { Findings = findings };
    }
}
