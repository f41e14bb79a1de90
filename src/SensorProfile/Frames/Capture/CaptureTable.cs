namespace SensorProfile.Frames.Capture;

/// <summary>
/// The capture table (CSV): what a person knows better than the headers. A filled cell wins over the header, an empty
/// one leaves it alone.
/// </summary>
/// <remarks>
/// Columns <c>file, kind, exposure_s, temperature_c, gain, offset, iso, binning, set, use</c>, in any order; others are
/// ignored. Only <c>file</c> must be there.
/// <c>file</c> is the name relative to the folder that was given (/ or \), the end of it, or the bare file name where
/// only one file bears it.
/// Tables as spreadsheets write them under other locales (semicolons or tabs, decimal commas, byte order mark, Latin-1)
/// are understood, with a finding.
/// </remarks>
public sealed partial class CaptureTable
{
    /// <summary>The columns, in the order they are written.</summary>
    internal static IReadOnlyList<string> Columns { get; } =
    ["file", "kind", "exposure_s", "temperature_c", "gain", "offset", "iso", "binning", "set", "use"];

    /// <summary>A table of these rows.</summary>
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

    /// <summary>What was odd in the way the table is written.</summary>
    internal IReadOnlyList<Finding> Findings { get; }
}
