using System.Text;

namespace SensorProfile.Frames.Headers;

/// <summary>The words that headers, capture tables and file names use for kinds of frame.</summary>
internal static class KindWords
{
    private static readonly Dictionary<string, FrameKind> Kinds = new(StringComparer.Ordinal)
    {
        ["bias"] = FrameKind.Bias,
        ["zero"] = FrameKind.Bias,
        ["biasexposure"] = FrameKind.Bias,
        ["offset"] = FrameKind.Bias,
        ["dark"] = FrameKind.Dark,
        ["darkexposure"] = FrameKind.Dark,
        ["flat"] = FrameKind.Flat,
        ["flatfield"] = FrameKind.Flat,
        ["skyflat"] = FrameKind.Flat,
        ["domeflat"] = FrameKind.Flat,
        ["twilightflat"] = FrameKind.Flat,
        ["panelflat"] = FrameKind.Flat,
        ["darkflat"] = FrameKind.DarkFlat,
        ["flatdark"] = FrameKind.DarkFlat,
        ["darkflatfield"] = FrameKind.DarkFlat,
        ["flatfielddark"] = FrameKind.DarkFlat,
        ["light"] = FrameKind.Light,
        ["object"] = FrameKind.Light,
        ["science"] = FrameKind.Light,
        ["lightexposure"] = FrameKind.Light,
    };

    private static readonly string[] StackWords =
    [
        "master",
        "stacked",
        "stack",
        "integrated",
        "combined",
        "superbias",
        "superdark",
    ];

    /// <summary>
    /// Reads a frame type in any case; spaces, underscores and hyphens are ignored; "frame", "frames" and a plural s
    /// are dropped.
    /// </summary>
    /// <param name="text">For example "Dark Frame", "flat-field", "MASTER_DARK".</param>
    /// <returns>The kind (<see cref="FrameKind.Unknown"/> for unknown words) and whether the words mean a
    /// stack.</returns>
    public static (FrameKind Kind, bool IsStack) Parse(string text)
    {
        string word = Letters(text);
        bool stack = false;
        foreach (string stackWord in StackWords)
        {
            if (!word.Contains(stackWord, StringComparison.Ordinal))
                continue;
            stack = true;
            word = word.Replace(
                stackWord,
                stackWord switch
                {
                    "superbias" => "bias",
                    "superdark" => "dark",
                    _ => "",
                },
                StringComparison.Ordinal
            );
        }
        return (KindOf(word), stack);
    }

    /// <summary>
    /// The kind named by a file or folder: whole words only, the file name before its folders, the nearest folder
    /// first.
    /// </summary>
    /// <returns>null when no name tells, or when one name gives two kinds.</returns>
    public static FrameKind? FromName(string relativeName)
    {
        string[] parts = relativeName.Split('/');
        for (int i = parts.Length - 1; i >= 0; i--)
        {
            if (FromWords(Words(parts[i])) is { } kind)
                return kind;
        }
        return null;
    }

    /// <summary>The word used in tables and sentences: bias, dark, flat, dark flat, light, unknown.</summary>
    public static string Name(FrameKind kind) =>
        kind switch
        {
            FrameKind.Bias => "bias",
            FrameKind.Dark => "dark",
            FrameKind.Flat => "flat",
            FrameKind.DarkFlat => "dark flat",
            FrameKind.Light => "light",
            _ => "unknown",
        };

    private static FrameKind KindOf(string letters)
    {
        string word = letters
            .Replace("frames", "", StringComparison.Ordinal)
            .Replace("frame", "", StringComparison.Ordinal);
        if (Kinds.TryGetValue(word, out FrameKind kind))
            return kind;
        if (word.EndsWith('s') && Kinds.TryGetValue(word[..^1], out kind))
            return kind;
        return FrameKind.Unknown;
    }

    private static FrameKind? FromWords(List<string> words)
    {
        FrameKind? found = null;
        for (int i = 0; i < words.Count; i++)
        {
            FrameKind kind = FrameKind.Unknown;
            string next = i + 1 < words.Count ? words[i + 1] : "";
            if (KindOf(words[i] + next) is FrameKind.DarkFlat)
                (kind, i) = (FrameKind.DarkFlat, i + 1);
            else if (!IsOrdinary(words[i], next))
                kind = KindOf(words[i]);
            if (kind == FrameKind.Unknown)
                continue;
            if (found is { } earlier && earlier != kind)
                return null;
            found = kind;
        }
        return found;
    }

    /// <summary>
    /// Words that appear in names for other reasons: offset_30, object_3, Dark Sky Park, Dark Nebula.
    /// </summary>
    private static bool IsOrdinary(string word, string next) =>
        word is "offset" or "object" or "zero"
        || (word == "dark" && next is ("sky" or "skies" or "site" or "nebula" or "horse"));

    private static List<string> Words(string name)
    {
        List<string> words = [];
        StringBuilder word = new();
        char previous = ' ';
        foreach (char c in name)
        {
            // masterDark, flat_01, dark300s
            bool starts = !char.IsLetter(c) || (char.IsUpper(c) && char.IsLower(previous));
            if (starts && word.Length > 0)
            {
                words.Add(word.ToString());
                word.Clear();
            }
            if (char.IsLetter(c))
                word.Append(char.ToLowerInvariant(c));
            previous = c;
        }
        if (word.Length > 0)
            words.Add(word.ToString());
        return words;
    }

    private static string Letters(string text)
    {
        StringBuilder letters = new(text.Length);
        foreach (char c in text)
        {
            if (char.IsLetterOrDigit(c))
                letters.Append(char.ToLowerInvariant(c));
        }
        return letters.ToString();
    }
}
