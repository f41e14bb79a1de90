using System.Globalization;
using System.Text;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;

namespace SensorProfile.Tests.Frames;

/// <summary>
/// A temporary folder of tiny FITS files whose header cards are written exactly as a test gives them, faults included.
/// </summary>
internal sealed class FrameFolder : IDisposable
{
    private const int Block = 2880;
    private int pixelSeed;

    public string Path { get; } = Directory.CreateTempSubdirectory("frames-").FullName;

    /// <summary>
    /// A dark as a well-behaved capture program writes it; cards given replace or (when empty) remove those.
    /// </summary>
    public string Add(string name, params (string Keyword, string Value)[] cards) =>
        Write(name, 4, 2, WithDefaults(cards));

    /// <summary>The same of another size.</summary>
    public string AddSized(string name, int width, int height, params (string Keyword, string Value)[] cards) =>
        Write(name, width, height, WithDefaults(cards));

    /// <summary>A header with nothing but what FITS demands and the cards given.</summary>
    public string AddBare(string name, params (string Keyword, string Value)[] cards) => Write(name, 4, 2, cards);

    /// <summary>Several frames a minute apart, numbered from 1.</summary>
    public void AddSeries(string prefix, int count, string start, Func<int, (string Keyword, string Value)[]> cards)
    {
        DateTime first = DateTime.Parse(start, CultureInfo.InvariantCulture);
        for (int i = 0; i < count; i++)
        {
            string stamp = first.AddMinutes(i).ToString("yyyy-MM-ddTHH:mm:ss.fff", CultureInfo.InvariantCulture);
            Add(
                string.Create(CultureInfo.InvariantCulture, $"{prefix}_{i + 1:00}.fits"),
                [("DATE-OBS", Quoted(stamp)), .. cards(i)]
            );
        }
    }

    public string Text(string name, string content, Encoding? encoding = null)
    {
        string path = Full(name);
        File.WriteAllBytes(
            path,
            [
                .. (encoding ?? new UTF8Encoding(false)).GetPreamble(),
                .. (encoding ?? new UTF8Encoding(false)).GetBytes(content),
            ]
        );
        return path;
    }

    public Inventory Read(InventoryOptions? options = null) =>
        FrameInventory.Read([Path], options ?? new InventoryOptions());

    public string Full(string name)
    {
        string path = System.IO.Path.Combine(Path, name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        return path;
    }

    public static string Quoted(string text) => $"'{text}'";

    public static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    public void Dispose() => Directory.Delete(Path, recursive: true);

    private static (string, string)[] WithDefaults((string Keyword, string Value)[] cards)
    {
        (string Keyword, string Value)[] defaults =
        [
            ("IMAGETYP", "'Dark Frame'"),
            ("EXPTIME", "300.0"),
            ("CCD-TEMP", "-10.1"),
            ("SET-TEMP", "-10.0"),
            ("GAIN", "100"),
            ("OFFSET", "30"),
            ("XBINNING", "1"),
            ("YBINNING", "1"),
            ("DATE-OBS", "'2025-10-04T21:00:00.125'"),
            ("INSTRUME", "'Tarn-9M'"),
        ];
        return
        [
            .. defaults.Where(d => !cards.Any(c => c.Keyword == d.Keyword)),
            .. cards.Where(c => c.Value.Length > 0),
        ];
    }

    private string Write(string name, int width, int height, IEnumerable<(string Keyword, string Value)> cards)
    {
        StringBuilder header = new();
        void Card(string keyword, string value) => header.Append($"{keyword, -8}= {value, 20}".PadRight(80));
        Card("SIMPLE", "T");
        Card("BITPIX", "16");
        Card("NAXIS", "2");
        Card("NAXIS1", width.ToString(CultureInfo.InvariantCulture));
        Card("NAXIS2", height.ToString(CultureInfo.InvariantCulture));
        foreach ((string keyword, string value) in cards)
            Card(keyword, value);
        header.Append("END".PadRight(80));
        string text = header.ToString();
        byte[] data = new byte[(width * height * 2 + Block - 1) / Block * Block];
        data[1] = (byte)++pixelSeed; // no two files alike
        string path = Full(name);
        File.WriteAllBytes(
            path,
            [.. Encoding.Latin1.GetBytes(text.PadRight((text.Length + Block - 1) / Block * Block)), .. data]
        );
        return path;
    }
}
