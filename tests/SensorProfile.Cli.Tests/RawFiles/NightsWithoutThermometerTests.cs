using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.RawFiles;

/// <summary>DNG frames of an ordinary camera that writes no temperature: three nights of 12, 18 and 4 °C.</summary>
public sealed class NightsWithoutThermometerTests : IDisposable
{
    private const string Camera = """
        { "name": "Fell-24C", "serial": 8, "width": 240, "height": 160, "colourFilter": "RGGB", "bits": 14, "codeStep": 4,
          "gain": 0.45, "readNoise": 3.2, "biasLevel": 2048, "cooled": false, "files": "dng",
          "darkCurrent": { "rateAtReference": 0.15, "referenceTemperature": 10, "doublingTemperature": 6 },
          "hotPixels": { "share": 0.004, "distribution": { "kind": "exponential", "minimum": 0.5, "maximum": 60, "scale": 3 } },
          "thermometer": { "missing": true }, "settings": { "gain": null, "offset": null, "iso": 800 },
        """;
    private const string Light = """
            { "kind": "bias", "temperature": 12, "count": 10 },
            { "kind": "flat", "exposure": 0.5, "temperature": 12, "count": 2, "level": 3500 },
            { "kind": "flat", "exposure": 1, "temperature": 12, "count": 2, "level": 7000 },
            { "kind": "flat", "exposure": 2, "temperature": 12, "count": 2, "level": 14000 },
            { "kind": "flat", "exposure": 3, "temperature": 12, "count": 2, "level": 21000 },
            { "kind": "flat", "exposure": 5, "temperature": 12, "count": 2, "level": 35000 },
            { "kind": "flat", "exposure": 6, "temperature": 12, "count": 2, "level": 42000 },
        """;
    private readonly TemporaryFolder folder = new();

    public NightsWithoutThermometerTests()
    {
        Write("first", "2031-10-21T17:30:00Z", 12, Light);
        Write("second", "2031-10-25T19:00:00Z", 18, "");
        Write("third", "2031-11-03T20:00:00Z", 4, "");
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void SurveyNamesTheNights()
    {
        CommandRun run = folder.Command.Run("survey", "nights", "--names-say", "--explain").Expect(ExitCodes.Answered);
        Assert.Equal(3, run.Output.Split('\n').Count(line => line.Contains("180 s", StringComparison.Ordinal)));
        foreach (string night in new[] { "2031-10-21", "2031-10-25", "2031-11-03" })
            Assert.Contains($"180 s  unknown, {night}", run.Output, StringComparison.Ordinal);
    }

    /// <summary>A warm night's short darks have more hot pixels than a cold night's long ones: nothing was taken
    /// out.</summary>
    [Fact]
    public void HotPixelsOrderTheNights()
    {
        CommandRun run = folder.Command.Run(
            "characterise",
            "nights",
            "--names-say",
            "--temperatures",
            "hot-pixels",
            "--out",
            "results",
            "--explain"
        );
        string said = run.Output + run.Error;
        Assert.DoesNotContain("hot-pixels-suppressed", said, StringComparison.Ordinal);
        string order = Assert.Single(said.Split('\n'), line =>
            line.Contains("By their hot pixels the nights were", StringComparison.Ordinal)
        );
        Assert.Matches("2031-11-03.*2031-10-21.*2031-10-25", order);
    }

    /// <summary>One reading a night in the capture table serves all frames of the night.</summary>
    [Fact]
    public void AGlassThermometersReadingsMakeALaw()
    {
        File.WriteAllLines(
            folder["table.csv"],
            ["file,temperature_c", .. Readings("first", 12), .. Readings("second", 18), .. Readings("third", 4)]
        );
        CommandRun run = folder.Command.Run(
            "characterise",
            "nights",
            "--names-say",
            "--table",
            "table.csv",
            "--out",
            "results"
        );
        Assert.Matches("dark current .* at .* °C, doubling every (5\\.[5-9]|6\\.[0-5])", run.FirstLine);
    }

    private IEnumerable<string> Readings(string night, double celsius) =>
        Directory
            .EnumerateFiles(folder["nights/" + night], "*.dng")
            .Order(StringComparer.Ordinal)
            .Where((_, i) => i % 6 == 0)
            .Select(path => FormattableString.Invariant($"{night}/{Path.GetFileName(path)},{celsius}"));

    private void Write(string name, string start, double celsius, string others)
    {
        string Dark(int seconds) =>
            FormattableString.Invariant(
                $$"""{ "kind": "dark", "exposure": {{seconds}}, "temperature": {{celsius}}, "count": 5 }"""
            );
        SimulatedNight.Write(
            folder["nights/" + name],
            $"{Camera} \"start\": \"{start}\", \"shots\": [ {others} {Dark(15)}, {Dark(60)}, {Dark(180)} ] }}"
        );
    }
}
