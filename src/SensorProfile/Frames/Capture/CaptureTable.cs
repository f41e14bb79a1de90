namespace SensorProfile.Frames.Capture;

/// <summary>
/// The capture table (CSV): corrections by someone who knows better than the headers. A filled cell overrides the
/// header, an empty one leaves it alone.
/// </summary>
/// <remarks>
/// Columns <c>file, kind, exposure_s, temperature_c, gain, offset, iso, binning, set, use</c>, in any order; others are
/// ignored. Only <c>file</c> is required: the name relative to the given folder (with / or \), the end of that name, or
/// the bare file name if it is unique. Tables that spreadsheets save under other locales (semicolons or tabs, decimal
/// commas, byte order mark, Latin-1) are accepted, with a finding.
/// </remarks>
public sealed partial class CaptureTable
{
    /// <summary>The columns, in the order they are written.</summary>
    internal static IReadOnlyList<string> Columns { get; } =
    ["file", "kind", "exposure_s", "temperature_c", "gain", "offset", "iso", "binning", "set", "use"];

    /// <summary>Makes a table from rows.</summary>
    public CaptureTable(IReadOnlyList<CaptureRow> rows)
        : this("capture table", rows, []) { }

    private CaptureTable(string name, IReadOnlyList<CaptureRow> rows, IReadOnlyList<Finding> findings)
    {
        Name = name;
        Rows = rows;
        Findings = findings;
    }

    /// <summary>File name of the table.</summary>
    internal string Name { get; }

    /// <summary>The rows, in the order of the table.</summary>
    internal IReadOnlyList<CaptureRow> Rows { get; }

    /// <summary>Findings about the way the table is written.</summary>
    internal IReadOnlyList<Finding> Findings { get; }
}
