using System.Globalization;

namespace SensorProfile.Frames;

/// <summary>Counts and lists for sentences.</summary>
internal static class Counted
{
    /// <summary>"1 frame", "12 frames".</summary>
    public static string Frames(int count) => Nouns(count, "frame");

    /// <summary>"1 file", "12 files".</summary>
    public static string Files(int count) => Nouns(count, "file");

    /// <summary>The number and the noun, with a plural s unless the number is 1.</summary>
    public static string Nouns(long count, string noun) =>
        count.ToString(CultureInfo.InvariantCulture) + " " + noun + (count == 1 ? "" : "s");

    /// <summary>"a, b and c".</summary>
    public static string List(IReadOnlyList<string> parts) =>
        parts.Count <= 1 ? string.Concat(parts) : string.Join(", ", parts.Take(parts.Count - 1)) + " and " + parts[^1];

    /// <summary>The first few items, then how many more there are.</summary>
    public static string Some(IReadOnlyList<string> parts, int most = 3) =>
        parts.Count <= most
            ? string.Join(", ", parts)
            : string.Join(", ", parts.Take(most))
                + " and "
                + (parts.Count - most).ToString(CultureInfo.InvariantCulture)
                + " more";
}
