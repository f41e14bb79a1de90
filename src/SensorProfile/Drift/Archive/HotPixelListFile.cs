using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsvHelper;
using CsvHelper.Configuration;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Drift.Archive;

/// <summary>
/// The list of hot pixels that an archive keeps instead of the full maps: <c>hot-pixels.csv</c>, described by
/// <c>hot-pixels.json</c>.
/// </summary>
internal static class HotPixelListFile
{
    private const string ListName = "hot-pixels.csv",
        NotesName = "hot-pixels.json",
        Format = "hot pixels of a camera sensor";
    private const int Version = 1;

    // pixels are listed from this share of the hot threshold on, so that next year's hot pixels can be seen coming
    private const double FloorShare = 0.4;

    private static readonly CsvConfiguration Csv = new(CultureInfo.InvariantCulture) { NewLine = "\r\n" };

    /// <summary>Writes both files.</summary>
    /// <param name="folder">Target folder.</param>
    /// <param name="rates">Rates from full maps or from a list.</param>
    /// <param name="hotExcess">Excess over the typical pixel from which a pixel is hot, e-/px/s.</param>
    public static void Write(string folder, PixelRates rates, double hotExcess)
    {
        double floor =
            rates is ListedRates listed ? listed.Floor
            : rates is ArchivedRates archived ? archived.Hot.Floor
            : rates.TypicalRate + FloorShare * hotExcess;
        int[] indices = [.. rates.Above(floor)];
        AtomicFile.Write(Path.Combine(folder, ListName), stream =>
        {
            using var text = new StreamWriter(stream, leaveOpen: true);
            using var csv = new CsvWriter(text, Csv);
            foreach (string name in (string[])["x", "y", "rate", "rate_uncertainty", "doubling", "flickers"])
                csv.WriteField(name);
            csv.NextRecord();
            foreach (int index in indices)
                WriteRow(csv, rates, index);
        });
        var notes = new JsonObject
        {
            ["format"] = Format,
            ["version"] = Version,
            ["width"] = rates.Width,
            ["height"] = rates.Height,
            ["referenceTemperature"] = rates.ReferenceTemperature,
            ["typicalRate"] = rates.TypicalRate,
            ["floor"] = floor,
            ["pixels"] = indices.Length,
            ["columns"] =
                "x, y: column and row from 1, first row of the file first; rate, rate_uncertainty: e-/px/s at "
                + "referenceTemperature (Celsius); doubling: Celsius, empty when not measured; flickers: 1 or "
                + "0. Every pixel above the floor is listed; the others lie below it.",
        };
        AtomicFile.Write(Path.Combine(folder, NotesName), stream =>
        {
            using var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" });
            notes.WriteTo(json);
        });
    }

    /// <summary>Reads the list; null when there is none.</summary>
    /// <exception cref="InvalidDataException">The list is damaged or of a later version; the message says
    /// where.</exception>
    /// <exception cref="ProfileFormatException">The file beside it is not JSON.</exception>
    public static ListedRates? Read(string folder)
    {
        string list = Path.Combine(folder, ListName),
            notes = Path.Combine(folder, NotesName);
        if (!File.Exists(list))
            return null;
        if (!File.Exists(notes))
            throw new InvalidDataException($"{notes}, which describes {ListName}, is missing");
        using var text = new StreamReader(list);
        return Parse(text, File.ReadAllBytes(notes), list, notes);
    }

    /// <summary>Parses the list from the contents of its two files.</summary>
    internal static ListedRates Parse(TextReader text, ReadOnlySpan<byte> description, string list, string notes)
    {
        JsonObject about = Notes(description, notes);
        int width = Member<int>(about, "width", notes),
            height = Member<int>(about, "height", notes),
            count = Member<int>(about, "pixels", notes);
        if (width < 1 || height < 1 || (long)width * height > Array.MaxLength)
            throw new InvalidDataException($"{notes} says {width} × {height} px, which no sensor has");
        SortedDictionary<int, ListedPixel> pixels = ReadRows(text, list, width, height);
        if (pixels.Count != count)
            throw new InvalidDataException(
                $"{list} holds {pixels.Count} pixels, but {NotesName} says {count}: it is incomplete or was changed"
            );
        return new ListedRates(Member<double>(about, "floor", notes), pixels)
        {
            Width = width,
            Height = height,
            TypicalRate = Member<double>(about, "typicalRate", notes),
            ReferenceTemperature = about["referenceTemperature"] is null
                ? null
                : Member<double>(about, "referenceTemperature", notes),
        };
    }

    private static void WriteRow(CsvWriter csv, PixelRates rates, int index)
    {
        (double rate, double uncertainty) = rates.At(index);
        double doubling = rates.Doubling(index);
        csv.WriteField(index % rates.Width + 1);
        csv.WriteField(index / rates.Width + 1);
        csv.WriteField((float)rate);
        csv.WriteField((float)uncertainty);
        csv.WriteField(double.IsFinite(doubling) ? ((float)doubling).ToString(CultureInfo.InvariantCulture) : "");
        csv.WriteField(rates.Flickers(index) ? 1 : 0);
        csv.NextRecord();
    }

    private static SortedDictionary<int, ListedPixel> ReadRows(TextReader text, string list, int width, int height)
    {
        SortedDictionary<int, ListedPixel> pixels = [];
        using var csv = new CsvReader(text, Csv);
        try
        {
            csv.Read();
            csv.ReadHeader();
            while (csv.Read())
            {
                (int x, int y) = (csv.GetField<int>("x"), csv.GetField<int>("y"));
                if (x < 1 || x > width || y < 1 || y > height)
                    throw new InvalidDataException(
                        $"{list}, line {csv.Parser.Row}: the pixel {x}, {y} lies outside {width} × {height} px"
                    );
                var pixel = new ListedPixel(
                    csv.GetField<float>("rate"),
                    csv.GetField<float>("rate_uncertainty"),
                    csv.GetField<double?>("doubling") ?? double.NaN,
                    csv.GetField<int>("flickers") != 0
                );
                if (!double.IsFinite(pixel.Rate) || double.IsInfinity(pixel.Uncertainty) || pixel.Uncertainty < 0)
                    throw new InvalidDataException(
                        $"{list}, line {csv.Parser.Row}: the pixel {x}, {y} has no finite rate or uncertainty"
                    );
                pixels[(y - 1) * width + x - 1] = pixel;
            }
            return pixels;
        }
        catch (CsvHelperException)
        {
            throw new InvalidDataException(
                $"{list}, line {csv.Parser.Row}: a row of x, y, rate, rate_uncertainty, doubling, flickers was "
                    + "expected"
            );
        }
    }

    private static JsonObject Notes(ReadOnlySpan<byte> utf8, string file)
    {
        JsonObject? about = ProfileFile.Document(
            JsonText.WithoutMark(utf8),
            file,
            "Restore it from a copy of the archive."
        );
        if (about?["format"]?.ToString() != Format)
            throw new InvalidDataException($"{file} does not describe a list of hot pixels");
        return Member<int>(about, "version", file) <= Version
            ? about
            : throw new InvalidDataException($"{file} was written by a later version of this program");
    }

    private static T Member<T>(JsonObject about, string name, string file)
        where T : struct =>
        about[name] is JsonValue value && value.TryGetValue(out T number)
            ? number
            : throw new InvalidDataException($"{file} lacks '{name}' or holds no number there");
}
