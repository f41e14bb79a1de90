using System.Globalization;

namespace SensorProfile.Pixels.Strips;

/// <summary>How many files the system lets this program keep open.</summary>
internal static class OpenFileLimit
{
    // files of the runtime and its libraries, and files opened briefly
    private const int Others = 128;

    /// <summary>
    /// Frames that may stay open: at most <see cref="FrameStack.MaxOpenFiles"/> and at most half of what the system
    /// allows beyond the program's own needs; none when that is too few.
    /// </summary>
    public static int Frames { get; } = FramesWithin(SystemLimit());

    /// <summary>The same for a given limit; null when the limit is unknown.</summary>
    internal static int FramesWithin(long? limit) =>
        limit is { } files
            ? (int)Math.Clamp((files - Others) / 2, 0, FrameStack.MaxOpenFiles)
            : FrameStack.MaxOpenFiles;

    /// <summary>The soft limit reported by Linux; null on other systems.</summary>
    private static long? SystemLimit()
    {
        const string heading = "Max open files";
        try
        {
            string? line = File.ReadLines("/proc/self/limits")
                .FirstOrDefault(l => l.StartsWith(heading, StringComparison.Ordinal));
            string[] words = line?[heading.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries) ?? [];
            return
                words.Length > 0
                && long.TryParse(words[0], NumberStyles.None, CultureInfo.InvariantCulture, out long files)
                ? files
                : null;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
