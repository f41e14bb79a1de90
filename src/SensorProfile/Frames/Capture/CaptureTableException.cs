namespace SensorProfile.Frames.Capture;

/// <summary>
/// A capture table that cannot be used; the message names file, line, column, what was found and the remedy.
/// </summary>
public sealed class CaptureTableException : IOException
{
    /// <summary>An error in one cell, or in the whole table when line is 0.</summary>
    public CaptureTableException(string file, int line, string? column, string problem)
        : base(Place(file, line, column) + ": " + problem)
    {
        File = file;
        Line = line;
        Column = column;
    }

    /// <summary>The table's file name.</summary>
    public string File { get; }

    /// <summary>Line, 1-based; 0 when the error concerns the whole table.</summary>
    public int Line { get; }

    /// <summary>Column name; null when the error concerns the whole line.</summary>
    public string? Column { get; }

    private static string Place(string file, int line, string? column) =>
        file
        + (line > 0 ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $", line {line}") : "")
        + (column is null ? "" : $", column {column}");
}
