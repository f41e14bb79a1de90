namespace SensorProfile.Frames;

/// <summary>File names in the form in which they are compared and shown: forward slashes, composed letters.</summary>
internal static class FileNames
{
    private static readonly string[] Bare = [".fits", ".fit", ".fts"];

    // TIFF inside, often with a coding of the maker's own
    private static readonly string[] MakersTiff =
    [
        ".3fr",
        ".arw",
        ".cr2",
        ".dcr",
        ".erf",
        ".fff",
        ".iiq",
        ".kdc",
        ".mef",
        ".mos",
        ".nef",
        ".nrw",
        ".pef",
        ".sr2",
        ".srf",
        ".srw",
    ];

    /// <summary>
    /// Forward slashes, no leading "./", accented letters composed (some systems store ü as u plus a combining mark).
    /// </summary>
    public static string Normalise(string name)
    {
        string text = name.Trim().Replace('\\', '/');
        while (text.StartsWith("./", StringComparison.Ordinal))
            text = text[2..];
        try
        {
            return ComposedLetters.Compose(text);
        }
        catch (ArgumentException) // not valid Unicode: left as it is
        {
            return text;
        }
    }

    /// <summary>
    /// A name as a table cell: a leading apostrophe keeps a spreadsheet from reading it as a formula.
    /// </summary>
    public static string ToCell(string name) => LooksLikeFormula(name) ? "'" + name : name;

    /// <summary>Undoes <see cref="ToCell"/>; other names stay as they are.</summary>
    public static string FromCell(string cell) => cell is ['\'', ..] && LooksLikeFormula(cell) ? cell[1..] : cell;

    private static bool LooksLikeFormula(string name) =>
        name.TrimStart('\'') is ['=' or '+' or '-' or '@' or '\t' or '\r', ..];

    /// <summary>The last component of a path.</summary>
    public static string BareName(string name) => name[(name.LastIndexOf('/') + 1)..];

    /// <summary>
    /// Whether a name ends in .fit, .fits or .fts, also followed by .gz or .fz, or in .fz alone; any case.
    /// </summary>
    public static bool IsFits(string fileName)
    {
        string lower = fileName.ToLowerInvariant();
        if (lower.EndsWith(".fz", StringComparison.Ordinal))
            return true;
        if (lower.EndsWith(".gz", StringComparison.Ordinal))
            lower = lower[..^3];
        return Array.Exists(Bare, extension => lower.EndsWith(extension, StringComparison.Ordinal));
    }

    /// <summary>Whether a name belongs to a maker's raw format that is TIFF inside.</summary>
    public static bool IsMakersTiff(string fileName) =>
        Array.Exists(MakersTiff, e => fileName.EndsWith(e, StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether only raw files have such a name, whatever the file contains.</summary>
    public static bool IsRawTiff(string fileName) =>
        IsMakersTiff(fileName) || fileName.EndsWith(".dng", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a file is hidden, a resource fork, or left behind by an editor or a download.</summary>
    public static bool IsHiddenOrTemporary(string fileName) =>
        fileName.StartsWith('.') || fileName.StartsWith('~') || fileName.EndsWith('~');
}
