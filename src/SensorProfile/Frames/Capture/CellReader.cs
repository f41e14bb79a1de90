using SensorProfile.Frames.Headers;
using static SensorProfile.Frames.NumberText;

namespace SensorProfile.Frames.Capture;

/// <summary>Converts the cells of a capture table to values; every error names line and column.</summary>
internal sealed class CellReader(string name, IReadOnlyDictionary<string, int> places)
{
    /// <summary>File name of the table.</summary>
    public string Name => name;

    /// <summary>Cells with a decimal comma, in order.</summary>
    public List<(int Line, string Text)> DecimalCommas { get; } = [];

    /// <summary>Reads one row.</summary>
    /// <param name="record">The cells.</param>
    /// <param name="line">Line of the row in the file, 1-based.</param>
    public CaptureRow Row(string[] record, int line)
    {
        string file = Cell(record, "file")
            ?? throw Error(line, "file", "the cell is empty; name the file, or delete the line.");
        if (file.Contains('\0'))
            throw Error(line, "file", "the name holds a null character, which no file's name does; write it again.");
        return new CaptureRow
        {
            File = FileNames.Normalise(FileNames.FromCell(file)),
            Line = line,
            Kind = Kind(Cell(record, "kind"), line),
            ExposureSeconds = Number(record, "exposure_s", line, 0, 1e6, "seconds"),
            TemperatureCelsius = Number(
                record,
                "temperature_c",
                line,
                TemperatureKeywords.Coldest,
                TemperatureKeywords.Warmest,
                "°C"
            ),
            Gain = Number(record, "gain", line, -1e9, 1e9, "a number"),
            Offset = Number(record, "offset", line, -1e9, 1e9, "a number"),
            Iso = Number(record, "iso", line, 0, 1e9, "a number"),
            Binning = Binning(Cell(record, "binning"), line),
            Set = Cell(record, "set") is { } set ? FileNames.FromCell(set) : null,
            Use = Use(Cell(record, "use"), line),
        };
    }

    private string? Cell(string[] record, string column) =>
        places.TryGetValue(column, out int place)
        && place < record.Length
        && record[place].Trim() is { Length: > 0 } text
            ? text
            : null;

    private double? Number(string[] record, string column, int line, double low, double high, string unit)
    {
        if (Cell(record, column) is not { } text)
            return null;
        if (!TryParse(text, out double value, out bool decimalComma) || !double.IsFinite(value))
            throw Error(
                line,
                column,
                $"expected a number, found '{text}'. Correct the cell, or leave it empty to keep the header's "
                    + "value."
            );
        if (value < low || value > high)
            throw Error(
                line,
                column,
                $"expected {Expected(low, high, unit)}, found {text}. Correct the cell, or leave it empty to keep "
                    + "the header's value."
            );
        if (decimalComma)
            DecimalCommas.Add((line, text));
        return value;
    }

    private static string Expected(double low, double high, string unit) =>
        low == 0 ? $"{unit}, 0 or more" : $"{unit} between {Short(low)} and {Short(high)}";

    private FrameKind? Kind(string? text, int line)
    {
        if (text is null)
            return null;
        (FrameKind kind, bool isStack) = KindWords.Parse(text);
        return kind != FrameKind.Unknown && !isStack
            ? kind
            : throw Error(
                line,
                "kind",
                $"expected bias, dark, flat, dark flat or light, found '{text}'. Correct the cell, or leave it "
                    + "empty to keep the header's value."
            );
    }

    private string? Binning(string? text, int line) =>
        text is null
            ? null
            : SettingsKeywords.ParseBinning(text)
                ?? throw Error(
                    line,
                    "binning",
                    $"expected a binning such as 1x1 or 2x2, found '{text}'. Correct the cell, or leave it empty to "
                        + "keep the header's value."
                );

    private bool Use(string? text, int line) =>
        text?.ToLowerInvariant() switch
        {
            null or "yes" or "y" or "1" or "true" => true,
            "no" or "n" or "0" or "false" => false,
            _ => throw Error(
                line,
                "use",
                $"expected yes or no, found '{text}'. Write no to leave the frame out, or leave the cell empty to use "
                    + "it."
            ),
        };

    private CaptureTableException Error(int line, string column, string problem) => new(name, line, column, problem);
}
