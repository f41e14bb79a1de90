using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using SensorProfile.Frames;

namespace SensorProfile.Reporting.Tables;

/// <summary>A table as CSV: RFC 4180, UTF-8, decimal points, numbers in full.</summary>
internal static class CsvText
{
    /// <summary>Writes the table to a stream and leaves it open.</summary>
    public static void Write(DataTable table, Stream stream)
    {
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n" };
        using var writer = new StreamWriter(
            stream,
            new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            leaveOpen: true
        );
        using var csv = new CsvWriter(writer, configuration, leaveOpen: true);
        foreach (string column in table.Columns)
            csv.WriteField(column);
        csv.NextRecord();
        foreach (IReadOnlyList<object?> row in table.Rows)
        {
            foreach (object? cell in row)
                csv.WriteField(Text(cell));
            csv.NextRecord();
        }
    }

    /// <summary>A cell: a number in full, empty where there is none; text escaped so that no spreadsheet evaluates it.</summary>
    public static string Text(object? cell) =>
        cell switch
        {
            null => "",
            bool yes => yes ? "yes" : "no",
            double number when !double.IsFinite(number) => "",
            double number => number.ToString("R", CultureInfo.InvariantCulture),
            DateTimeOffset time => time.UtcDateTime.ToString(
                "yyyy-MM-ddTHH:mm:ss.FFFFFFFZ",
                CultureInfo.InvariantCulture
            ),
            IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
            _ => FileNames.ToCell(cell.ToString() ?? ""),
        };
}
