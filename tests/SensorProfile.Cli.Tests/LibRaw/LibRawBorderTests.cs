using System.Text.Json.Nodes;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Raw;
using SensorProfile.Raw.LibRaw;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Cli.Tests.LibRaw;

/// <summary>The masked border of makers' files: as much of it as a DNG of the same samples gives.</summary>
public sealed class LibRawBorderTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>Every stored sample, told apart by its place, comes back at its place.</summary>
    [LibRawTheory]
    [InlineData(0, 0, 0, 0)]
    [InlineData(10, 0, 0, 0)]
    [InlineData(0, 12, 0, 0)]
    [InlineData(10, 12, 4, 6)]
    public void AllStoredSamplesComeBackAtTheirPlace(int top, int left, int bottom, int right)
    {
        const int width = 90,
            height = 70;
        var area = new RawArea(top, left, height - bottom, width - right);
        ushort[] samples = [.. Enumerable.Range(0, width * height).Select(i => (ushort)(i * 7 % 16_001))];
        string path = folder["frame.dng"];
        DngWriter.Write(path, Frame(samples, width, height, area));
        var read = new ushort[samples.Length];
        LibRawFrame frame = LibRawDecoder.Run(
            path,
            (_, row, rows) => rows.Span.CopyTo(read.AsSpan(row * width)),
            alsoDng: true
        );
        Assert.Equal(area, frame.Mosaic.ActiveArea);
        Assert.Equal((width, height), (frame.Mosaic.SensorWidth, frame.Mosaic.SensorHeight));
        Assert.Equal(samples, read);
        using RawFile own = RawFile.Open(path);
        Assert.Equal(own.Mosaic.MaskedAreas, frame.Mosaic.MaskedAreas);
    }

    /// <summary>Through LibRaw a night gives the profile of its DNG files, to the last digit of every quantity.</summary>
    [LibRawTheory, InlineData(".orf")]
    public void TheProfileIsThatOfTheDngFiles(string extension)
    {
        SimulatedNight.Write(folder["dng"], Night);
        Directory.CreateDirectory(folder["other"]);
        foreach (string path in Directory.GetFiles(folder["dng"], "*.dng"))
            File.WriteAllBytes(
                Path.Combine(folder["other"], Path.GetFileNameWithoutExtension(path) + extension),
                MakersFile.FromDng(File.ReadAllBytes(path))
            );
        string expected = Profile("dng"),
            profile = Profile("other");
        Assert.Contains("\"maskedBorder\"", expected, StringComparison.Ordinal);
        Assert.Equal(expected, profile.Replace(extension, ".dng", StringComparison.Ordinal));
    }

    private string Profile(string frames)
    {
        folder // one temperature makes no law
            .Command.Run("characterise", frames, "--names-say", "--out", frames + "-out")
            .Expect(ExitCodes.CannotTell);
        JsonObject profile = JsonNode.Parse(File.ReadAllText(folder[$"{frames}-out/profile.json"]))!.AsObject();
        profile.Remove("createdUtc");
        profile["frames"]!.AsObject().Remove("inputDigest"); // of the files' bytes
        return profile.ToJsonString();
    }

    private static DngFrame Frame(ushort[] samples, int width, int height, RawArea area) =>
        new()
        {
            Width = width,
            Height = height,
            Samples = samples,
            BitsPerSample = 16,
            ActiveArea = area,
            ColourFilter = new RawColourFilter(RawColour.Green, RawColour.Blue, RawColour.Red, RawColour.Green),
            WhiteLevel = 16_383,
            Facts = new RawFacts { Camera = "Fell-24C", ExposureSeconds = 30 },
        };

    private const string Night = """
        { "name": "Fell-24C", "width": 120, "height": 90, "colourFilter": "RGGB", "bits": 14, "gain": 0.45, "readNoise": 3.2,
          "biasLevel": 1024, "cooled": false, "files": "dng", "maskedBorder": { "left": 16, "top": 12 },
          "start": "2031-10-21T17:30:00Z", "thermometer": { "resolution": 0.5 },
          "darkCurrent": { "rateAtReference": 0.15, "referenceTemperature": 10, "doublingTemperature": 6 },
          "settings": { "gain": null, "offset": null, "iso": 800 },
          "shots": [
            { "kind": "bias", "temperature": 12, "count": 8 },
            { "kind": "flat", "exposure": 0.5, "temperature": 12, "count": 2, "level": 500 },
            { "kind": "flat", "exposure": 1, "temperature": 12, "count": 2, "level": 1000 },
            { "kind": "flat", "exposure": 2, "temperature": 12, "count": 2, "level": 2000 },
            { "kind": "flat", "exposure": 3, "temperature": 12, "count": 2, "level": 3000 },
            { "kind": "flat", "exposure": 4, "temperature": 12, "count": 2, "level": 4000 },
            { "kind": "flat", "exposure": 6, "temperature": 12, "count": 2, "level": 6000 },
            { "kind": "dark", "exposure": 60, "temperature": 12, "count": 2 },
            { "kind": "dark", "exposure": 180, "temperature": 12, "count": 2 } ] }
        """;
}
