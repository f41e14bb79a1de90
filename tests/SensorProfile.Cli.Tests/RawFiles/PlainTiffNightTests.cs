using System.Text.Json.Nodes;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Raw;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Cli.Tests.RawFiles;

/// <summary>
/// Plain TIFF mosaics of 16 bits say nothing but samples: the capture table says the rest, and the numbers are those of the
/// same samples in DNG form.
/// </summary>
public sealed class PlainTiffNightTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(RawCompression.None)]
    [InlineData(RawCompression.Deflate)]
    public void TheCaptureTableMakesAFullProfile(RawCompression compression)
    {
        SimulatedNight.Write(folder["dng"], Night);
        Directory.CreateDirectory(folder["tiff"]);
        foreach (string path in Directory.GetFiles(folder["dng"], "*.dng"))
            WriteTiff(path, folder[$"tiff/{Path.GetFileNameWithoutExtension(path)}.tif"], compression);
        folder.Command.Run("survey", "tiff", "--table", "table.csv").Expect(ExitCodes.Answered);
        string[] rows = File.ReadAllLines(folder["table.csv"]);
        Assert.Equal("file,kind,exposure_s,temperature_c,gain,offset,iso,binning,set,use", rows[0].Trim('\uFEFF'));
        // a person fills in kind, exposure, temperature and ISO
        File.WriteAllLines(folder["table.csv"], [rows[0], .. rows.Skip(1).Select(FilledIn)]);
        CommandRun survey = folder.Command.Run("survey", "tiff", "--table", "table.csv");
        Assert.StartsWith("Ready to characterise", survey.FirstLine, StringComparison.Ordinal);
        JsonNode tiff = Mode("tiff", "--table", "table.csv"),
            dng = Mode("dng", "--names-say");
        foreach (string quantity in new[] { "readNoise", "gain", "biasLevel", "linearityError" })
        {
            Assert.NotNull(dng[quantity]);
            Assert.Equal(dng[quantity]!["value"]!.ToJsonString(), tiff[quantity]!["value"]!.ToJsonString());
        }
        Assert.NotNull(tiff["darkCurrent"]!["models"] ?? tiff["darkCurrent"]!["points"]);
        Assert.Equal(800, tiff["settings"]!["iso"]!.GetValue<double>());
    }

    private JsonNode Mode(string frames, params string[] options)
    {
        folder.Command.Run(["characterise", frames, "--out", frames + "-out", .. options]);
        JsonNode profile = JsonNode.Parse(File.ReadAllText(folder[$"{frames}-out/profile.json"]))!;
        return Assert.Single(profile["modes"]!.AsArray())!;
    }

    /// <summary>The names are those of the simulator, dark_12C_60s_001; a bias frame has no exposure in its name.</summary>
    private static string FilledIn(string row)
    {
        string name = row.Split(',')[0];
        string[] parts = name.Split('_');
        string celsius = parts.Single(p => p.EndsWith('C'))[..^1],
            seconds = parts.SingleOrDefault(p => p.EndsWith('s') && char.IsAsciiDigit(p[0]))?[..^1] ?? "0.000125";
        return $"{name},{parts[0]},{seconds},{celsius},,,800,1x1,,yes";
    }

    private static void WriteTiff(string dng, string path, RawCompression compression)
    {
        using RawFile file = RawFile.Open(dng);
        var frame = new DngFrame
        {
            Width = file.Mosaic.Width,
            Height = file.Mosaic.Height,
            Samples = new ushort[file.Mosaic.Width * file.Mosaic.Height],
            BitsPerSample = 16,
        };
        var samples = new ushort[frame.Width * frame.Height];
        file.ReadRows(0, samples);
        frame = frame with { Samples = samples };
        using FileStream stream = File.Create(path);
        var tiff = new TiffBuilder(stream, bigEndian: false);
        TiffEntries entries = tiff.NewDirectory();
        SegmentWriter.Write(tiff, entries, frame, new DngForm { Compression = compression });
        entries.Shorts(Tag.PhotometricInterpretation, 1);
        tiff.Finish(tiff.Append(entries));
    }

    private const string Night = """
        { "name": "Fell-24C", "width": 120, "height": 90, "bits": 14, "gain": 0.45, "readNoise": 3.2, "biasLevel": 1024,
          "cooled": false, "files": "dng", "start": "2031-10-21T17:30:00Z", "thermometer": { "resolution": 1 },
          "darkCurrent": { "rateAtReference": 0.15, "referenceTemperature": 10, "doublingTemperature": 6 },
          "settings": { "gain": null, "offset": null, "iso": 800 },
          "shots": [
            { "kind": "bias", "temperature": 12, "count": 8 },
            { "kind": "flat", "exposure": 1, "temperature": 12, "count": 2, "level": 800 },
            { "kind": "flat", "exposure": 2, "temperature": 12, "count": 2, "level": 1600 },
            { "kind": "flat", "exposure": 3, "temperature": 12, "count": 2, "level": 2400 },
            { "kind": "flat", "exposure": 4, "temperature": 12, "count": 2, "level": 3200 },
            { "kind": "flat", "exposure": 6, "temperature": 12, "count": 2, "level": 4800 },
            { "kind": "flat", "exposure": 8, "temperature": 12, "count": 2, "level": 6400 },
            { "kind": "flat", "exposure": 12, "temperature": 12, "count": 2, "level": 9600 },
            { "kind": "dark", "exposure": 15, "temperature": 20, "count": 2 },
            { "kind": "dark", "exposure": 60, "temperature": 20, "count": 2 },
            { "kind": "dark", "exposure": 180, "temperature": 20, "count": 2 },
            { "kind": "dark", "exposure": 15, "temperature": 12, "count": 2 },
            { "kind": "dark", "exposure": 60, "temperature": 12, "count": 2 },
            { "kind": "dark", "exposure": 180, "temperature": 12, "count": 2 },
            { "kind": "dark", "exposure": 15, "temperature": 4, "count": 2 },
            { "kind": "dark", "exposure": 60, "temperature": 4, "count": 2 },
            { "kind": "dark", "exposure": 180, "temperature": 4, "count": 2 } ] }
        """;
}
