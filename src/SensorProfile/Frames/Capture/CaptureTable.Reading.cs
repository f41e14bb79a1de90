using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;

namespace SensorProfile.Frames.Capture;

public sealed partial class CaptureTable
{
    private static readonly UTF8Encoding StrictUtf8 = new(false, throwOnInvalidBytes: true);

    /// <summary>Reads a capture table.</summary>
    /// <param name="csvPath">A CSV file, RFC 4180.</param>
    /// <exception cref="CaptureTableException">The table or one of its cells is invalid; the message names line and
    /// column.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static CaptureTable Read(string csvPath) => Parse(Path.GetFileName(csvPath), File.ReadAllBytes(csvPath));

    internal static CaptureTable Parse(string name, byte[] content)
    {
        List<Finding> findings = [];
        string text = Decode(content, name, findings);
        char delimiter = DelimiterOf(text);
        if (delimiter != ',')
            findings.Add(
                new Finding(
                    FindingCodes.CaptureTableDelimiter,
                    Severity.Note,
                    $"{name} is separated by {(delimiter == ';' ? "semicolons" : "tabs")}; it was read that way, nothing needs to be done."
                )
            );
        CsvConfiguration configuration = new(CultureInfo.InvariantCulture)
        {
            Delimiter = delimiter.ToString(),
            TrimOptions = TrimOptions.Trim,
            HasHeaderRecord = false,
            IgnoreBlankLines = true,
            BadDataFound = bad =>
                throw new CaptureTableException(
                    name,
                    bad.Context.Parser!.RawRow,
                    null,
                    "a quotation mark is inside an unquoted cell; put the whole cell in quotation "
                        + "marks and double the inner ones."
                ),
        };
        using CsvParser parser = new(new StringReader(text), configuration);
        CellReader cells = ReadColumns(name, parser, findings);
        List<CaptureRow> rows = ReadRows(parser, cells);
        if (cells.DecimalCommas.Count > 0)
            findings.Add(
                new Finding(
                    FindingCodes.CaptureTableDecimalComma,
                    Severity.Note,
                    $"{name} writes numbers with a decimal comma (first in line {cells.DecimalCommas[0].Line}: "
                        + $"{cells.DecimalCommas[0].Text}); they were read as decimals, not as thousands."
                )
            );
        return new CaptureTable(name, rows, findings);
    }

    private static CellReader ReadColumns(string name, CsvParser parser, List<Finding> findings)
    {
        if (!parser.Read() || parser.Record is not { } header)
            throw new CaptureTableException(
                name,
                0,
                null,
                "the table is empty; its first line must name the columns " + string.Join(", ", Columns) + "."
            );
        Dictionary<string, int> places = [];
        List<string> unknown = [];
        for (int i = 0; i < header.Length; i++)
        {
            string column = header[i].Trim().ToLowerInvariant().Replace(' ', '_').Replace('-', '_');
            if (!Columns.Contains(column))
            {
                if (column.Length > 0)
                    unknown.Add(header[i].Trim());
                continue;
            }
            if (!places.TryAdd(column, i))
                throw new CaptureTableException(
                    name,
                    parser.RawRow,
                    column,
                    "the column appears twice; remove one of them."
                );
        }
        if (!places.ContainsKey("file"))
            throw new CaptureTableException(
                name,
                parser.RawRow,
                "file",
                $"the column is missing (found: {string.Join(", ", header)}); name the column that holds the file "
                    + "names 'file'."
            );
        if (unknown.Count > 0)
            findings.Add(
                new Finding(
                    FindingCodes.CaptureTableColumns,
                    Severity.Warning,
                    $"{name} has unknown columns, which were not used: {string.Join(", ", unknown)}; the "
                        + $"columns are {string.Join(", ", Columns)}."
                )
            );
        return new CellReader(name, places);
    }

    private static List<CaptureRow> ReadRows(CsvParser parser, CellReader cells)
    {
        List<CaptureRow> rows = [];
        Dictionary<string, int> lineOf = new(StringComparer.Ordinal);
        int previous = parser.RawRow;
        while (parser.Read())
        {
            int line = parser.RawRow;
            if (parser.Record is not { } record || record.All(string.IsNullOrWhiteSpace))
                continue;
            CaptureRow row = cells.Row(record, line);
            if (!lineOf.TryAdd(row.File, line))
                throw new CaptureTableException(
                    cells.Name,
                    line,
                    "file",
                    $"'{row.File}' is already in line {lineOf[row.File]}; keep one of the two rows."
                );
            rows.Add(row);
        }
        return rows;
    }

    private static string Decode(byte[] content, string name, List<Finding> findings)
    {
        try
        {
            using StreamReader reader = new(
                new MemoryStream(content),
                StrictUtf8,
                detectEncodingFromByteOrderMarks: true
            );
            return reader.ReadToEnd();
        }
        catch (DecoderFallbackException)
        {
            findings.Add(
                new Finding(
                    FindingCodes.CaptureTableEncoding,
                    Severity.Note,
                    $"{name} is not UTF-8; it was read as Latin-1. If a file name with an accented letter is not "
                        + "found, save the table as CSV UTF-8."
                )
            );
            return Encoding.Latin1.GetString(content);
        }
    }

    /// <summary>
    /// The separator that occurs most often in the first line, outside quotes; a comma when there is none.
    /// </summary>
    private static char DelimiterOf(string text)
    {
        int commas = 0,
            semicolons = 0,
            tabs = 0;
        bool quoted = false;
        foreach (char c in text)
        {
            if (c == '"')
                quoted = !quoted;
            if (quoted)
                continue;
            if (c is '\n' or '\r' && commas + semicolons + tabs > 0)
                break;
            if (c == ',')
                commas++;
            else if (c == ';')
                semicolons++;
            else if (c == '\t')
                tabs++;
        }
        return semicolons > commas && semicolons >= tabs ? ';'
            : tabs > commas ? '\t'
            : ',';
    }
}
