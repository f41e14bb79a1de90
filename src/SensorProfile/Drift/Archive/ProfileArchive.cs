using System.Globalization;
using SensorProfile.Pixels.Strips;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.Archive;

/// <summary>
/// Profiles that are kept for years: a folder per session, with the profile and a small list of its hot pixels.
/// </summary>
/// <remarks>
/// Layout: <c>ARCHIVE/camera/2031-10-14/profile.json</c> and, where maps were measured,
/// <c>maps/[mode/]hot-pixels.csv</c> with <c>hot-pixels.json</c> beside it, which
/// says what the columns mean, and <c>ordinary-pixels.fits.gz</c> with the rates of all pixels. Text, JSON and FITS: it
/// can be read without this program. Nothing that stands in an archive is ever replaced.
/// </remarks>
public static class ProfileArchive
{
    internal const string ProfileName = "profile.json",
        MapsName = "maps";

    /// <summary>Reads profiles from files and folders; folders are searched with all below them.</summary>
    /// <param name="paths">Profiles, folders that characterise wrote, or whole archives.</param>
    /// <returns>Oldest first; a file that cannot be read is named and never stops the rest.</returns>
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
                        "There is no profile.json in this folder or below it; give what characterise wrote."
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
    /// The temperature that the rates of a camera's last session in an archive refer to, °C: sessions are compared best
    /// at one temperature. Null when there is none.
    /// </summary>
    /// <param name="archive">Folder of the archive; need not exist.</param>
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

    /// <summary>Copies a profile and what pixel-by-pixel comparison needs of its maps into an archive.</summary>
    /// <param name="archive">Folder of the archive; made when it does not exist.</param>
    /// <param name="profile">The profile.</param>
    /// <param name="name">Folder of its sensor in the archive.</param>
    /// <returns>The session's folder and what could not be kept; the folder holds the same profile already when it was
    /// archived before.</returns>
    /// <exception cref="IOException">The archive cannot be written, or another profile of that camera and day stands
    /// there.</exception>
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
                    $"{file}: another profile of this camera and day is kept here, and an archive replaces "
                        + "nothing; move it away, or use another archive."
                );
        }
        // of the report that was written before
        MapMemory.Release((long)profile.Profile.Camera.Width * profile.Profile.Camera.Height);
        Directory.CreateDirectory(folder);
        List<Finding> findings = [];
        for (int mode = 0; mode < profile.Profile.Modes.Count; mode++)
            KeepPixels(folder, profile, mode, findings);
        AtomicFile.Write(file, stream => stream.Write(content)); // last: where it stands, all stands
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
        HotPixelListFile.Write(target, rates, HotThreshold.Of(profile.Profile.Modes[mode], rates.TypicalRate));
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

    // names that Windows keeps for devices, whatever follows a point
    private static readonly string[] devices = ["CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$"];

    /// <summary>A camera's name as a folder that every system takes.</summary>
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
