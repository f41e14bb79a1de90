using System.Globalization;
using SensorProfile.Pixels.Strips;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.Archive;

/// <summary>
/// Profiles kept for years: a folder per session, with the profile and a small list of its hot pixels.
/// </summary>
/// <remarks>
/// Layout: <c>ARCHIVE/camera/2031-10-14/profile.json</c> and, where maps were measured,
/// <c>maps/[mode/]hot-pixels.csv</c>, the <c>hot-pixels.json</c> that describes its columns, and
/// <c>ordinary-pixels.fits.gz</c> with the rates of all pixels. Text, JSON and FITS: an archive can be read without
/// this program, and nothing in it is ever replaced.
/// </remarks>
public static class ProfileArchive
{
    internal const string ProfileName = "profile.json",
        MapsName = "maps";

    /// <summary>Reads profiles from files and folders; folders are searched recursively.</summary>
    /// <param name="paths">Profiles, folders that characterise wrote, or whole archives.</param>
    /// <returns>Profiles, oldest first, and the files that could not be read, each with the reason.</returns>
    public static FoundProfiles Read(IReadOnlyList<string> paths)
    {
        ArgumentNullException.ThrowIfNull(paths);
        List<ProfileOnDisk> found = [];
        List<RejectedFile> refused = [];
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (string path in paths)
        {
            string[] files = Files(path);
            if (files.Length == 0)
                refused.Add(
                    new RejectedFile(
                        path,
                        "There is no profile.json in this folder or below it; give a folder that holds one."
                    )
                );
            if (files is [var only] && seen.Contains(Path.GetFullPath(only)))
                refused.Add(new RejectedFile(path, "It is named twice: give the profile of another session."));
            foreach (string file in files.Where(f => seen.Add(Path.GetFullPath(f))))
                ReadOne(file, found, refused);
        }
        return new FoundProfiles(
            [.. found.OrderBy(p => p.DateUtc).ThenBy(p => p.File, StringComparer.Ordinal)],
            refused
        );
    }

    /// <summary>
    /// Reference temperature of a camera's last session in an archive, °C: sessions compare best at one temperature.
    /// Null when there is none.
    /// </summary>
    /// <param name="archive">Folder of the archive; it need not exist.</param>
    /// <param name="camera">Name of the camera, as its frames state it.</param>
    public static double? ReferenceTemperature(string archive, string? camera)
    {
        ArgumentException.ThrowIfNullOrEmpty(archive);
        if (camera is null || !Directory.Exists(archive))
            return null;
        return Read([archive])
            .Profiles.Where(p =>
                string.Equals(p.Profile.Camera.Name.Trim(), camera.Trim(), StringComparison.OrdinalIgnoreCase)
            )
            .SelectMany(p => p.Profile.Modes)
            .Select(m => m.DarkCurrent?.ReferenceTemperature)
            .LastOrDefault(t => t is not null);
    }

    /// <summary>
    /// Copies a profile into an archive, with the parts of its maps that pixel-by-pixel comparison needs.
    /// </summary>
    /// <param name="archive">Folder of the archive; created if missing.</param>
    /// <param name="profile">The profile.</param>
    /// <param name="name">The sensor's folder in the archive.</param>
    /// <returns>The session's folder and what could not be kept. A profile that was archived before keeps its
    /// folder.</returns>
    /// <exception cref="IOException">The archive cannot be written, or it already holds another profile of that camera
    /// and day.</exception>
    internal static (string Folder, IReadOnlyList<Finding> Findings) Keep(
        string archive,
        ProfileOnDisk profile,
        string name
    )
    {
        string folder = Path.Combine(
            archive,
            name,
            profile.DateUtc.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        );
        string file = Path.Combine(folder, ProfileName);
        byte[] content = ProfileFile.ToUtf8(profile.Profile);
        if (File.Exists(file))
        {
            return File.ReadAllBytes(file).AsSpan().SequenceEqual(content)
                ? (folder, [])
                : throw new IOException(
                    $"{file}: another profile of this camera and day is already here, and an archive never "
                        + "replaces a file; move it away, or use another archive."
                );
        }
        // left over from the report written before
        MapMemory.Release((long)profile.Profile.Camera.Width * profile.Profile.Camera.Height);
        Directory.CreateDirectory(folder);
        List<Finding> findings = [];
        for (int mode = 0; mode < profile.Profile.Modes.Count; mode++)
            KeepPixels(folder, profile, mode, findings);
        AtomicFile.Write(file, stream => stream.Write(content)); // last: where it exists, all the rest does
        return (folder, findings);
    }

    private static void KeepPixels(string folder, ProfileOnDisk profile, int mode, List<Finding> findings)
    {
        (PixelRates? rates, Finding? finding) = PixelRates.Read(profile, mode);
        if (finding is not null)
            findings.Add(finding);
        if (rates is null)
            return;
        string target = Path.Combine(
            folder,
            MapsName,
            profile.Profile.Modes.Count == 1 ? "" : ModeLabel.Folders(profile.Profile.Modes)[mode]
        );
        Directory.CreateDirectory(target);
        HotPixelListFile.Write(target, rates, HotThreshold.Choose(profile.Profile.Modes[mode], rates.TypicalRate));
        OrdinaryMapFile.Write(target, rates);
    }

    private static string[] Files(string path)
    {
        if (!Directory.Exists(path))
            return [path];
        try
        {
            return
            [
                .. Directory
                    .EnumerateFiles(path, ProfileName, SearchOption.AllDirectories)
                    .Order(StringComparer.Ordinal),
            ];
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    private static void ReadOne(string file, List<ProfileOnDisk> found, List<RejectedFile> refused)
    {
        try
        {
            found.Add(ProfileOnDisk.Read(file));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            refused.Add(
                new RejectedFile(
                    file,
                    problem is ProfileFormatException or FileNotFoundException
                        ? problem.Message
                        : $"It cannot be opened ({problem.Message}); check its permissions and the disk."
                )
            );
        }
    }

    // device names that Windows reserves, whatever extension follows
    private static readonly string[] devices = ["CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$"];

    /// <summary>A camera's name as a folder name that every system accepts.</summary>
    internal static string FolderName(string name)
    {
        string safe = string.Concat(
                name.Trim().Select(c => char.IsLetterOrDigit(c) || c is '.' or '-' or '_' ? c : '-')
            )
            .Trim('.', '-');
        safe = safe[..Math.Min(safe.Length, 60)].TrimEnd('.', '-');
        string first = safe.Split('.')[0];
        bool isDevice =
            devices.Contains(first, StringComparer.OrdinalIgnoreCase)
            || (
                first.Length == 4
                && char.IsAsciiDigit(first[3])
                && (
                    first.StartsWith("COM", StringComparison.OrdinalIgnoreCase)
                    || first.StartsWith("LPT", StringComparison.OrdinalIgnoreCase)
                )
            );
        return safe.Length == 0 ? "camera"
            : isDevice ? "camera-" + safe
            : safe;
    }
}
