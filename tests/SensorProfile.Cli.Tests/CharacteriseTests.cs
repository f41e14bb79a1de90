using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

public sealed class CharacteriseTests : IDisposable
{
    private static readonly CultureInfo Invariant = CultureInfo.InvariantCulture;

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void AFullNightGivesAProfileAReportTablesAndMaps()
    {
        SimulatedNight.Write(folder["eine Nacht"], SimulatedNight.Full);
        SortedDictionary<string, string> before = TemporaryFolder.Digests(folder["eine Nacht"]);
        CommandRun run = folder
            .Command.Run("characterise", "eine Nacht", "--out", "Ergebnis ü")
            .Expect(ExitCodes.Answered);
        Assert.StartsWith("Read noise 1.", run.FirstLine, StringComparison.Ordinal);
        foreach (
            string file in new[]
            {
                "profile.json",
                "report.pdf",
                "report.html",
                "card.pdf",
                "card.html",
                "maps/read-noise.fits",
                "maps/dark-rate.fits",
                "tables/defects.csv",
            }
        )
            Assert.True(File.Exists(folder["Ergebnis ü/" + file]), file);
        Assert.NotEmpty(Directory.GetFiles(folder["Ergebnis ü/tables"], "*.csv"));
        Assert.Equal(before, TemporaryFolder.Digests(folder["eine Nacht"]));
        Assert.Equal(2, Directory.GetFileSystemEntries(folder.Path).Length);

        JsonElement profile = JsonDocument.Parse(File.ReadAllText(folder["Ergebnis ü/profile.json"])).RootElement;
        JsonElement gain = profile.GetProperty("modes")[0].GetProperty("gain");
        // the camera's true gain
        Assert.InRange(
            (gain.GetProperty("value").GetDouble() - 0.8) / gain.GetProperty("standardUncertainty").GetDouble(),
            -4,
            4
        );

        folder.Command.Run("report", "Ergebnis ü/profile.json", "--out", "again").Expect(ExitCodes.Answered);
        foreach (string file in new[] { "report.html", "report.pdf", "card.html", "card.pdf" })
            Assert.Equal(File.ReadAllBytes(folder["Ergebnis ü/" + file]), File.ReadAllBytes(folder["again/" + file]));
        Assert.Equal(TemporaryFolder.Digests(folder["Ergebnis ü/maps"]), TemporaryFolder.Digests(folder["again/maps"]));
        Assert.Equal(
            TemporaryFolder.Digests(folder["Ergebnis ü/tables"]),
            TemporaryFolder.Digests(folder["again/tables"])
        );

        SortedDictionary<string, string> complete = TemporaryFolder.Digests(folder["Ergebnis ü"]);
        // into its own folder: nothing is lost
        folder.Command.Run("report", "Ergebnis ü", "--out", "Ergebnis ü", "--overwrite").Expect(ExitCodes.Answered);
        Assert.Equal(complete, TemporaryFolder.Digests(folder["Ergebnis ü"]));
    }

    /// <summary>Every stage once, in the order of the work; the reads of all stages together are those of the last row.</summary>
    [Fact]
    public void StagesAreTimedWhenAsked()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.Full);
        folder
            .Command.Run("characterise", "night", "--quick", "--out", "timed", "--timings", "times.csv")
            .Expect(ExitCodes.Answered);
        string[][] rows = [.. File.ReadAllLines(folder["times.csv"]).Select(line => line.Split(','))];
        Assert.Equal("stage,wall_s,processor_s,read_bytes,passes,allocated_bytes".Split(','), rows[0]);
        string[] stages = [.. rows[1..].Select(r => r[0])];
        Assert.Equal(stages.Distinct(), stages);
        Assert.Equal("reading headers", stages[0]);
        Assert.Equal(["report", "all"], stages[^2..]);
        Assert.True(Array.IndexOf(stages, "first look") < Array.IndexOf(stages, "dark rate of every pixel"));
        Assert.Equal(rows[1..^1].Sum(r => long.Parse(r[3], Invariant)), long.Parse(rows[^1][3], Invariant));
        // the first look reads every frame, the walk over the darks most of them again
        Assert.InRange(double.Parse(rows[^1][4], Invariant), 1.5, 20);
        Assert.True(double.Parse(rows[^1][2], Invariant) > 0);

        string before = File.ReadAllText(folder["times.csv"]);
        CommandRun again = folder.Command.Run("characterise", "night", "--out", "more", "--timings", "times.csv");
        Assert.Equal(ExitCodes.UnwritableOutput, again.ExitCode);
        Assert.Contains("times.csv", again.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(folder["times.csv"]));
        Assert.False(Directory.Exists(folder["more"]));
    }

    [Fact]
    public void ThresholdsAreTakenFromAFileOrFromAnEarlierProfile()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.Full);
        File.WriteAllText(folder["limits.json"], """{ "hotRate": 0.7, "warmRate": 0.3, "significance": 4 }""");
        folder
            .Command.Run("characterise", "night", "--out", "first", "--thresholds", "limits.json", "--reference", "-8")
            .Expect(ExitCodes.Answered);
        folder
            .Command.Run("characterise", "night", "--out", "second", "--thresholds", "first/profile.json")
            .Expect(ExitCodes.Answered);
        JsonElement[] patterns =
        [
            .. new[] { "first", "second" }.Select(name =>
                JsonDocument
                    .Parse(File.ReadAllText(folder[name + "/profile.json"]))
                    .RootElement.GetProperty("modes")[0]
                    .GetProperty("fixedPattern")
            ),
        ];
        Assert.All(patterns, pattern =>
        {
            Assert.Equal(-8, pattern.GetProperty("referenceTemperature").GetDouble());
            Assert.Equal(
                [0.7, 0.3, 4],
                new[] { "hotRate", "warmRate", "significance" }.Select(name =>
                    pattern.GetProperty("thresholds").GetProperty(name).GetDouble()
                )
            );
        });
        Assert.Equal(patterns[0].GetProperty("defects").GetRawText(), patterns[1].GetProperty("defects").GetRawText());

        File.WriteAllText(folder["limits.json"], """{ "hot": 0.7 }""");
        Assert.Contains(
            "limits.json: there is no threshold “hot”.",
            folder.Command.Run("characterise", "night", "--out", "third", "--thresholds", "limits.json").Error,
            StringComparison.Ordinal
        );
        Assert.False(Directory.Exists(folder["third"]));
    }

    [Fact]
    public void OneBadFileAmongManyIsNamedAndLeftOut()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.Full);
        byte[] frame = File.ReadAllBytes(folder["night/bias_-10C_001.fits"]);
        File.WriteAllBytes(folder["night/cut.fits"], frame[..^5000]);
        CommandRun run = folder
            .Command.Run("characterise", "night", "--out", "out", "--json")
            .Expect(ExitCodes.Answered);
        Assert.Contains("left out: cut.fits: ", run.Error, StringComparison.Ordinal);
        JsonElement profile = JsonDocument.Parse(File.ReadAllText(folder["out/profile.json"])).RootElement;
        Assert.Contains(profile.GetProperty("frames").GetProperty("rejected").EnumerateArray(), r =>
            r.GetProperty("file").GetString() == "cut.fits"
        );
        Assert.Contains("cut.fits", File.ReadAllText(folder["out/report.html"]), StringComparison.Ordinal);
        Assert.Equal("measured", run.Json.GetProperty("verdict").GetString());
    }

    [Fact]
    public void DarksAloneGiveNullsFindingsAndExitCode1()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        CommandRun run = folder
            .Command.Run("characterise", "night", "--out", "out", "--json")
            .Expect(ExitCodes.CannotTell);
        JsonElement quantities = run.Json.GetProperty("quantities");
        Assert.Equal(JsonValueKind.Null, quantities.GetProperty("readNoise").ValueKind);
        Assert.Equal(JsonValueKind.Null, quantities.GetProperty("gain").ValueKind);
        Assert.Equal("incomplete", run.Json.GetProperty("verdict").GetString());
        Assert.Contains(run.Json.GetProperty("findings").EnumerateArray(), f =>
            f.GetProperty("message").GetString()!.Contains("bias", StringComparison.OrdinalIgnoreCase)
        );
        Assert.True(File.Exists(folder["out/report.html"]));
    }

    [Theory, InlineData(3, true), InlineData(12, false)]
    public void BlackCutOffAtZeroGivesNoReadNoiseAndExitCode1(int biasLevel, bool cut)
    {
        // Noise of 2 ADU about a level of 3: 10 % of the pixels at code 0; about a level of 12, 6 deviations away,
        // none.
        SimulatedNight.Write(
            folder["night"],
            SimulatedNight.Full.Replace(
                "\"gain\": 0.8,",
                $"\"gain\": 0.8, \"biasLevel\": {biasLevel}, \"clampBlack\": true,",
                StringComparison.Ordinal
            )
        );
        CommandRun run = folder.Command.Run("characterise", "night", "--out", "out", "--json");
        JsonElement readNoise = run.Json.GetProperty("quantities").GetProperty("readNoise");
        JsonElement[] refusals =
        [
            .. run
                .Json.GetProperty("findings")
                .EnumerateArray()
                .Where(f => f.GetProperty("code").GetString() == "black-clipped"),
        ];
        if (!cut)
        {
            Assert.InRange(readNoise.GetProperty("value").GetDouble(), 1.5, 1.7);
            Assert.Empty(refusals);
            return;
        }
        run.Expect(ExitCodes.CannotTell);
        Assert.Equal(JsonValueKind.Null, readNoise.ValueKind);
        Assert.Equal("incomplete", run.Json.GetProperty("verdict").GetString());
        Assert.EndsWith(
            "raise the camera's offset setting and take the bias frames again.",
            Assert.Single(refusals).GetProperty("message").GetString(),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "offset setting and take the bias frames again",
            File.ReadAllText(folder["out/report.html"]),
            StringComparison.Ordinal
        );
        Assert.Equal(
            JsonValueKind.Null,
            JsonDocument
                .Parse(File.ReadAllText(folder["out/profile.json"]))
                .RootElement.GetProperty("modes")[0]
                .GetProperty("readNoise")
                .ValueKind
        );
    }

    [Fact]
    public void NothingReadableIsExitCode3AndLeavesNoFolder()
    {
        Directory.CreateDirectory(folder["night"]);
        File.WriteAllText(folder["night/a.fits"], "nothing");
        CommandRun run = folder.Command.Run("characterise", "night", "--out", "out").Expect(ExitCodes.UnreadableInput);
        Assert.StartsWith("sensorprofile: a.fits: ", run.Error.Split('\n')[^2], StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["out"]));
    }

    [Theory]
    [InlineData("night")]
    [InlineData("night/results")]
    [InlineData("./night/../night/results")]
    public void AnOutputFolderInsideTheFramesIsRefused(string place)
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        CommandRun run = folder
            .Command.Run("characterise", "night", "--out", place, "--overwrite")
            .Expect(ExitCodes.WrongCommandLine);
        Assert.Contains("which is read: results would mix with your frames", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AnExistingFolderIsKeptUnlessOverwriteIsGiven()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        folder.Command.Run("characterise", "night", "--out", "out").Expect(ExitCodes.CannotTell);
        File.WriteAllText(folder["out/notes.txt"], "mine");
        File.WriteAllText(folder["out/tables/stale.csv"], "from an earlier run");
        folder.Command.Run("characterise", "night", "--out", "out").Expect(ExitCodes.UnwritableOutput);
        folder.Command.Run("characterise", "night", "--out", "out", "--overwrite").Expect(ExitCodes.CannotTell);
        Assert.Equal("mine", File.ReadAllText(folder["out/notes.txt"]));
        Assert.False(File.Exists(folder["out/tables/stale.csv"]));
    }

    [Fact]
    public void InterruptedWorkEndsWith130AndLeavesNothing()
    {
        SimulatedNight.Write(
            folder["night"],
            SimulatedNight.Full.Replace(
                "\"width\": 160, \"height\": 120",
                "\"width\": 1200, \"height\": 900",
                StringComparison.Ordinal
            )
        );
        using Process process = folder.Command.Start("characterise", "night", "--out", "out");
        process.StandardError.ReadLine(); // "reading headers …": the work has begun
        using (
            Process kill = Process.Start(
                "kill",
                ["-INT", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]
            )
        )
            kill.WaitForExit();
        CommandRun run = SensorProfileCommand.Finish(process).Expect(ExitCodes.Interrupted);
        Assert.EndsWith(
            "sensorprofile: interrupted; nothing unfinished was kept.\n",
            run.Error,
            StringComparison.Ordinal
        );
        Assert.Equal([folder["night"]], Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public void ProgressInAPipeIsAFewLines()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.Full);
        CommandRun run = folder.Command.Run("characterise", "night", "--out", "out").Expect(ExitCodes.Answered);
        Assert.InRange(run.Error.Split('\n').Length, 2, 25);
        Assert.DoesNotContain("\u001b", run.Error, StringComparison.Ordinal);
    }
}
