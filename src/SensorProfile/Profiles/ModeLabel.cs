using System.Globalization;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Profiles;

/// <summary>The settings of a mode as words and as a folder name.</summary>
public static class ModeLabel
{
    /// <summary>"gain 100, offset 30", "ISO 800, binned 2x2", or "one setting" where the headers do not say.</summary>
    /// <param name="settings">The settings.</param>
    public static string Text(ModeSettings settings)
    {
        string[] parts =
        [
            .. Parts(settings)
                .Select(part =>
                    part.Name switch
                    {
                        "iso" => $"ISO {part.Value}",
                        "binning" => $"binned {part.Value}",
                        "readout" => $"read-out {part.Value}",
                        string name => $"{name} {part.Value}",
                    }
                ),
        ];
        return parts.Length == 0 ? "one setting" : string.Join(", ", parts);
    }

    /// <summary>
    /// "gain-100-offset-30": letters, digits, points and hyphens only, so that every file system takes it; "mode" where
    /// the headers do not say.
    /// </summary>
    /// <param name="settings">The settings.</param>
    internal static string Folder(ModeSettings settings)
    {
        string name = string.Join('-', Parts(settings).Select(part => $"{part.Name}-{part.Value}"));
        string safe = string.Concat(
            name.Select(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-' ? char.ToLowerInvariant(c) : '-')
        );
        return safe.Length == 0 ? "mode" : safe[..Math.Min(safe.Length, 80)];
    }

    /// <summary>Folder names of all modes of a profile, numbered where two would be the same.</summary>
    /// <param name="modes">The modes.</param>
    public static IReadOnlyList<string> Folders(IReadOnlyList<ModeProfile> modes)
    {
        ArgumentNullException.ThrowIfNull(modes);
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var folders = new List<string>(modes.Count);
        foreach (ModeProfile mode in modes)
        {
            string wanted = Folder(mode.Settings),
                name = wanted;
            for (int n = 2; !taken.Add(name); n++)
                name = string.Create(CultureInfo.InvariantCulture, $"{wanted}-{n}");
            folders.Add(name);
        }
        return folders;
    }

    private static IEnumerable<(string Name, string Value)> Parts(ModeSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (settings.Gain is { } gain)
            yield return ("gain", gain.ToString(CultureInfo.InvariantCulture));
        if (settings.Offset is { } offset)
            yield return ("offset", offset.ToString(CultureInfo.InvariantCulture));
        if (settings.Iso is { } iso)
            yield return ("iso", iso.ToString(CultureInfo.InvariantCulture));
        if (settings.Binning != "1x1")
            yield return ("binning", settings.Binning);
        if (settings.Readout is { Length: > 0 } readout)
            yield return ("readout", readout);
    }
}
