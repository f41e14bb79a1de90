namespace SensorProfile.Frames;

/// <summary>File names as they are compared and shown: forward slashes, composed letters.</summary>
internal static class FileNames
{
    private static readonly string[] Bare = [".fits", ".fit", ".fts"];

    // TIFF inside, often in a coding of the maker's own
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
    /// Forward slashes, no leading "./", accented letters in one piece (some systems store ü as u and two dots).
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
        catch (ArgumentException) // not valid Unicode: compared as it is
        {
            return text;
        }
    }

    /// <summary>
    /// A name as a cell of a table: an apostrophe in front keeps a spreadsheet from taking it for a formula.
    /// </summary>
    public static string ToCell(string name) => LooksLikeFormula(name) ? "'" + name : name;

    /// <summary>The name that <see cref="ToCell"/> made a cell of; other names stay as they are.</summary>
    public static string FromCell(string cell) => cell is ['\'', ..] && LooksLikeFormula(cell) ? cell[1..] : cell;

    private static bool LooksLikeFormula(string name) =>
        name.TrimStart('\'') is ['=' or '+' or '-' or '@' or '\t' or '\r', ..];

    /// <summary>The last part of a name.</summary>
    public static string BareName(string name) => name[(name.LastIndexOf('/') + 1)..];

    /// <summary>.fit, .fits, .fts, each also with .gz or .fz behind, and .fz alone; any case.</summary>
    public static bool IsFits(string fileName)
    {
        string lower = fileName.ToLowerInvariant();
        if (lower.EndsWith(".fz", StringComparison.Ordinal))
            return true;
        if (lower.EndsWith(".gz", StringComparison.Ordinal))
            lower = lower[..^3];
        return Array.Exists(Bare, extension => lower.EndsWith(extension, StringComparison.Ordinal));
    }

    /// <summary>A maker's raw format that is TIFF inside.</summary>
    public static bool IsMakersTiff(string fileName) =>
        Array.Exists(MakersTiff, e => fileName.EndsWith(e, StringComparison.OrdinalIgnoreCase));

    /// <summary>A name that only raw files have, whatever the file holds.</summary>
    public static bool IsRawTiff(string fileName) =>
        IsMakersTiff(fileName) || fileName.EndsWith(".dng", StringComparison.OrdinalIgnoreCase);

    /// <summary>Hidden files, resource forks, and what editors and downloads leave behind.</summary>
    public static bool IsHiddenOrTemporary(string fileName) =>
        fileName.StartsWith('.') || fileName.StartsWith('~') || fileName.EndsWith('~');
}
