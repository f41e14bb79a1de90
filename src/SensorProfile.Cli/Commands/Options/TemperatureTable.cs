using System.Globalization;
using SensorProfile.Decisions.Setpoint;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>
/// Temperatures from a text table, one per line: optionally a date or a name, then the temperature in °C
/// ("2026-07-14,19.5"). A first line without a number is a heading.
/// </summary>
internal static class TemperatureTable
{
    /// <exception cref="CommandFailure">The file cannot be read, or a line holds no temperature.</exception>
    public static IReadOnlyList<AmbientTemperature> Read(string path)
    {
        if (!File.Exists(path))
            throw CommandFailure.UnreadableInput($"{path}: there is no table of temperatures here.");
        return Parse(File.ReadLines(path), path);
    }

    /// <summary>Reads the temperatures from the lines of a table.</summary>
    internal static IReadOnlyList<AmbientTemperature> Parse(IEnumerable<string> lines, string path)
    {
        List<AmbientTemperature> rows = [];
        int number = 0;
        foreach (string line in lines)
        {
            number++;
            string[] cells =
            [
                .. line.Split(
                        line.Contains(';') ? ';'
                        : line.Contains('\t') ? '\t'
                        : ','
                    )
                    .Select(cell => cell.Trim().Trim('"')),
            ];
            if (cells.All(cell => cell.Length == 0))
                continue;
            if (Temperature(cells[^1], decimalComma: line.Contains(';') || line.Contains('\t')) is { } celsius)
                rows.Add(
                    new AmbientTemperature(cells.Length > 1 ? cells[0] : QuantityText.Temperature(celsius), celsius)
                );
            else if (rows.Count > 0 || number > 1)
                throw CommandFailure.UnreadableInput(
                    $"{path}, line {number}: expected a temperature in °C at the end of the line, found '{cells[^1]}'. Correct "
                        + "the line or take it out."
                );
        }
        return rows.Count > 0
            ? rows
            : throw CommandFailure.UnreadableInput(
                $"{path}: holds no temperatures. Write one per line: date, comma, °C of the night."
            );
    }

    private static double? Temperature(string text, bool decimalComma) =>
        double.TryParse(
            (decimalComma ? text.Replace(',', '.') : text).Replace('−', '-'),
            NumberStyles.Float,
            CultureInfo.InvariantCulture,
            out double celsius
        ) && double.IsFinite(celsius)
            ? celsius
            : null;
}
