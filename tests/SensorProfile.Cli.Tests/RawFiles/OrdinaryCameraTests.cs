using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.RawFiles;

/// <summary>All that one does with a camera, on a folder of DNG files at two ISO settings.</summary>
public sealed class OrdinaryCameraTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void EveryCommandAnswersOnAFolderOfDngFiles()
    {
        Write("night/low", 800, 0.45, Night);
        Write("night/high", 1600, 0.225, Night);
        Write(
            "lights",
            1600,
            0.225,
            "[ { \"kind\": \"light\", \"exposure\": 60, \"temperature\": 12, \"count\": 4 } ]"
        );
        Answers("Ready to characterise", "survey", "night", "--names-say", "--table", "table.csv");
        Answers("Nothing is missing|Take \\d+ frames", "shots", "--uncooled", "--have", "night", "--names-say");
        Answers(
            "At ISO 800: read noise",
            "characterise",
            "night",
            "--table",
            "table.csv",
            "--names-say",
            "--out",
            "out"
        );
        Answers("At ISO 800: ", "report", "out", "--out", "again");
        string[] camera = ["out", "--exposure", "60", "--sky", "1"];
        CommandRun both = folder
            .Command.Run(["setpoint", .. camera, "--uncooled", "--ambient", "15"])
            .Expect(ExitCodes.WrongCommandLine);
        Assert.Contains("(ISO 800; ISO 1600): say which ISO you mean", both.Error, StringComparison.Ordinal);
        Answers("outside", ["setpoint", .. camera, "--uncooled", "--ambient", "15", "--iso", "800"]);
        Answers("Use ISO (800|1600) and expose at least", "exposure", "out", "--sky", "1");
        Answers("Use darks at most", ["darks", "match", .. camera, "--lights", "20", "--iso", "1600"]);
        Answers(
            "These darks",
            "darks",
            "match",
            "--profile",
            "out",
            "--lights",
            "lights",
            "--darks",
            "night/high",
            "--sky",
            "1",
            "--names-say"
        );
        // said by the option, they need not say it themselves: the lights were called "4 darks" and warned about
        Write("evening", 1600, 0.225, """[ { "kind": "dark", "exposure": 60, "temperature": 12, "count": 4 } ]""");
        CommandRun said = folder.Command.Run(
            "darks",
            "match",
            "--profile",
            "out",
            "--lights",
            "lights",
            "--darks",
            "evening",
            "--sky",
            "1"
        );
        Assert.Contains("4 lights of 60 s", said.Output, StringComparison.Ordinal);
        Assert.Contains("4 darks of 60 s", said.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("kind-missing", said.Output, StringComparison.Ordinal);
        CommandRun other = folder.Command.Run(
            "darks",
            "match",
            "--profile",
            "out",
            "--lights",
            "lights",
            "--darks",
            "night/low",
            "--sky",
            "1",
            "--names-say"
        );
        Assert.Contains("the darks were taken at ISO 800", other.Output, StringComparison.Ordinal);
        Answers(
            "Shoot",
            ["darks", "plan", .. camera, "--lights", "20", "--uncooled", "--temperature", "12", "--iso", "800"]
        );
        Answers(
            "",
            "darks",
            "predict",
            "out",
            "--iso",
            "800",
            "--temperature",
            "8",
            "--exposure",
            "60",
            "--out",
            "dark.fits"
        );
        Answers("", "darks", "check", "dark.fits", "--against", "night/low", "--profile", "out", "--names-say");
    }

    private void Answers(string firstLine, params string[] arguments)
    {
        CommandRun run = folder.Command.Run(arguments);
        Assert.True(run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell, run.Output + run.Error);
        Assert.Matches(firstLine, run.FirstLine);
        Assert.DoesNotContain(
            "FITS",
            run.Output.Replace("dark.fits", "", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
    }

    private void Write(string name, int iso, double gain, string shots) =>
        SimulatedNight.Write(
            folder[name],
            FormattableString.Invariant(
                $$"""
                { "name": "Fell-24C", "serial": 8, "width": 160, "height": 120, "colourFilter": "RGGB", "bits": 14,
                  "gain": {{gain}}, "readNoise": 3.2, "biasLevel": 1024, "cooled": false, "files": "dng",
                  "start": "2031-10-21T17:30:00Z", "thermometer": { "resolution": 0.5 },
                  "darkCurrent": { "rateAtReference": 0.15, "referenceTemperature": 10, "doublingTemperature": 6 },
                  "hotPixels": { "share": 0.004,
                                 "distribution": { "kind": "exponential", "minimum": 0.5, "maximum": 60, "scale": 3 } },
                  "settings": { "gain": null, "offset": null, "iso": {{iso}} }, "shots": {{shots}} }
                """
            )
        );

    private const string Night = """
        [ { "kind": "bias", "temperature": 12, "count": 8 },
          { "kind": "flat", "exposure": 0.5, "temperature": 12, "count": 2, "level": 500 },
          { "kind": "flat", "exposure": 1, "temperature": 12, "count": 2, "level": 1000 },
          { "kind": "flat", "exposure": 1.5, "temperature": 12, "count": 2, "level": 1500 },
          { "kind": "flat", "exposure": 2, "temperature": 12, "count": 2, "level": 2000 },
          { "kind": "flat", "exposure": 2.5, "temperature": 12, "count": 2, "level": 2500 },
          { "kind": "flat", "exposure": 3, "temperature": 12, "count": 2, "level": 3000 },
          { "kind": "flat", "exposure": 9, "temperature": 12, "count": 2, "level": 9000 },
          { "kind": "dark", "exposure": 15, "temperature": 20, "count": 4 },
          { "kind": "dark", "exposure": 60, "temperature": 20, "count": 4 },
          { "kind": "dark", "exposure": 180, "temperature": 20, "count": 4 },
          { "kind": "dark", "exposure": 15, "temperature": 12, "count": 4 },
          { "kind": "dark", "exposure": 60, "temperature": 12, "count": 4 },
          { "kind": "dark", "exposure": 180, "temperature": 12, "count": 4 },
          { "kind": "dark", "exposure": 15, "temperature": 4, "count": 4 },
          { "kind": "dark", "exposure": 60, "temperature": 4, "count": 4 },
          { "kind": "dark", "exposure": 180, "temperature": 4, "count": 4 } ]
        """;
}
