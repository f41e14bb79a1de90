using System.Text.Json;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Fits;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Cli.Tests;

/// <summary>drift on stored profiles, and darks check on masters and fresh frames.</summary>
public sealed class DriftCommandTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public DriftCommandTests()
    {
        for (int year = 2031; year < 2033; year++)
        {
            string file = folder[Path.Combine($"{year}", "profile.json")];
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            TarnProfile.Write(file);
            CameraProfile profile = ProfileFile.Read(file);
            ModeProfile mode = profile.Modes[0];
            // +20 % at 2 % each: z = 8
            if (year == 2032)
                mode = mode with { ReadNoise = mode.ReadNoise! with { Value = 1.8 } };
            ProfileFile.Write(
                file,
                profile with
                {
                    CreatedUtc = profile.CreatedUtc.AddYears(year - 2031),
                    Modes = [mode],
                }
            );
        }
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void AMasterThatIsNotThereIsAWrongPathAndNoAnswer() =>
        Assert.Contains(
            "nowhere.fits: there is no such file or folder; check the path.",
            folder
                .Command.Run("darks", "check", "nowhere.fits", "--against", "2031")
                .Expect(ExitCodes.UnreadableInput)
                .Error,
            StringComparison.Ordinal
        );

    [Fact]
    public void DriftSaysWhatChangedInTextInJsonAndOnDisk()
    {
        CommandRun text = folder
            .Command.Run("drift", "2031", "2032/profile.json", "--out", "drift", "--explain")
            .Expect(ExitCodes.Answered);
        Assert.StartsWith(
            "The sensor has changed in 1 year: the read noise is up by 20 %",
            text.FirstLine,
            StringComparison.Ordinal
        );
        Assert.Contains("common practice, no source", text.Output, StringComparison.Ordinal);
        JsonElement json = JsonDocument.Parse(File.ReadAllText(folder["drift/drift.json"])).RootElement;
        Assert.Equal(
            ("drift", "changed", text.FirstLine),
            (
                json.GetProperty("command").GetString(),
                json.GetProperty("verdict").GetString(),
                json.GetProperty("sentence").GetString()
            )
        );
        JsonElement change = json.GetProperty("changes")
            .EnumerateArray()
            .Single(c => c.GetProperty("changed").GetBoolean());
        Assert.Equal("readNoise", change.GetProperty("quantity").GetString());
        Assert.Equal(1.5, change.GetProperty("from").GetProperty("value").GetDouble());
        foreach (string name in new[] { "to", "change", "z", "adjustedP" })
            Assert.True(change.TryGetProperty(name, out _), name);
        Assert.True(json.TryGetProperty("hotPixels", out _));
        Assert.StartsWith(
            "kind,quantity,mode,unit,from,",
            File.ReadAllText(folder["drift/tables/drift.csv"]),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "The sensor has changed in 1 year",
            File.ReadAllText(folder["drift/drift.html"]).Replace('\u00A0', ' '),
            StringComparison.Ordinal
        );
        Assert.StartsWith("%PDF", File.ReadAllText(folder["drift/drift.pdf"])[..8], StringComparison.Ordinal);
    }

    /// <summary>Seen: <c>--json --out</c> ended with 70, "The node already has a parent".</summary>
    [Fact]
    public void EveryCombinationOfOptionsGivesTheSameAnswer()
    {
        string sentence = folder.Command.Run("drift", "2031", "2032").Expect(ExitCodes.Answered).FirstLine;
        for (int options = 1; options < 8; options++)
        {
            List<string> arguments = ["drift", "2031", "2032"];
            bool json = (options & 1) != 0,
                page = (options & 2) != 0;
            if (json)
                arguments.Add("--json");
            if (page)
                arguments.AddRange(["--out", $"out-{options}"]);
            if ((options & 4) != 0)
                arguments.AddRange(["--archive", $"archive-{options}"]);
            CommandRun run = folder.Command.Run([.. arguments]).Expect(ExitCodes.Answered);
            Assert.Equal(sentence, json ? run.Json.GetProperty("sentence").GetString() : run.FirstLine);
            if (page)
                Assert.Equal(
                    sentence,
                    JsonDocument
                        .Parse(File.ReadAllText(folder[$"out-{options}/drift.json"]))
                        .RootElement.GetProperty("sentence")
                        .GetString()
                );
        }
    }

    /// <summary>
    /// Two cameras of one model: 300 hot pixels each, none the other's. Exit code 1, and the archive keeps them apart.
    /// </summary>
    [Fact]
    public void AnotherSensorIsExitCode1AndIsArchivedApart()
    {
        WriteMaps("2031", seed: 1);
        WriteMaps("2032", seed: 2);
        CommandRun run = folder
            .Command.Run("drift", "2031", "2032", "--json", "--archive", "archive")
            .Expect(ExitCodes.CannotTell);
        Assert.Equal("another-sensor", run.Json.GetProperty("verdict").GetString());
        Assert.Equal(
            ["Tarn-9M", "Tarn-9M-sensor-2"],
            Directory.GetDirectories(folder["archive"]).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        WriteMaps("2032", seed: 1);
        folder.Command.Run("drift", "2031", "2032").Expect(ExitCodes.Answered);
    }

    private void WriteMaps(string year, int seed)
    {
        const int width = 200,
            height = 160;
        string file = folder[Path.Combine(year, "profile.json")],
            maps = folder[Path.Combine(year, "maps")];
        CameraProfile profile = ProfileFile.Read(file);
        ProfileFile.Write(file, profile with { Camera = profile.Camera with { Width = width, Height = height } });
        Directory.CreateDirectory(maps);
        var random = new Random(seed);
        float[] rate = [.. Enumerable.Repeat(0.01f, width * height)];
        for (int i = 0; i < 300; i++)
            rate[random.Next(rate.Length)] = 2;
        Write("dark-rate.fits", rate);
        Write("dark-rate-uncertainty.fits", [.. Enumerable.Repeat(0.004f, rate.Length)]);

        void Write(string name, float[] pixels) =>
            FitsWriter.Write(Path.Combine(maps, name), new FitsImage<float>(width, height, pixels), overwrite: true);
    }

    [Fact]
    public void OneProfileCannotTell() =>
        Assert.Equal(
            "cannot-tell",
            folder
                .Command.Run("drift", "2031", "--json")
                .Expect(ExitCodes.CannotTell)
                .Json.GetProperty("verdict")
                .GetString()
        );

    [Fact]
    public void WhatIsNoProfileIsExitCode3AndNamed()
    {
        File.WriteAllText(folder["notes.json"], "[]");
        Assert.Contains(
            "notes.json",
            folder.Command.Run("drift", "notes.json").Expect(ExitCodes.UnreadableInput).Error,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "notes.json",
            folder.Command.Run("drift", "2031", "2032", "notes.json").Expect(ExitCodes.Answered).Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AnArchiveIsKeptAndComparedAsAWhole()
    {
        folder.Command.Run("drift", "2031", "2032", "--archive", "archive").Expect(ExitCodes.Answered);
        JsonElement json = folder.Command.Run("drift", "archive", "--json").Expect(ExitCodes.Answered).Json;
        Assert.Equal(2, json.GetProperty("compared").GetArrayLength());
    }

    [Fact]
    public void CharacteriseKeepsItsProfileInTheArchive()
    {
        SimulatedNight.Write(folder["frames"], SimulatedNight.DarksOnly);
        CommandRun run = folder.Command.Run("characterise", "frames", "--out", "results", "--archive", "archive");
        Assert.Contains("Kept in the archive archive: 1 profile.", run.Output, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(folder["archive"], "profile.json", SearchOption.AllDirectories));
    }

    [Fact]
    public void DarksCheckJudgesEveryMaster()
    {
        SimulatedNight.Write(folder["fresh"], SimulatedNight.DarksOnly);
        string master = Path.Combine(
            "fresh",
            Path.GetFileName(Directory.GetFiles(folder["fresh"], "dark*.fits").Order(StringComparer.Ordinal).First())
        );
        CommandRun run = folder.Command.Run("darks", "check", master, "--against", "fresh", "--json", "--out", "check");
        Assert.True(run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell, run.Error);
        JsonElement one = Assert.Single(run.Json.GetProperty("masters").EnumerateArray());
        Assert.Contains(one.GetProperty("verdict").GetString(), new[] { "keep", "retake", "cannot-tell" });
        foreach (string name in new[] { "file", "residual", "reason" })
            Assert.True(one.TryGetProperty(name, out _), name);
        Assert.Contains("Master darks", File.ReadAllText(folder["check/check.html"]), StringComparison.Ordinal);
        Assert.StartsWith("%PDF", File.ReadAllText(folder["check/check.pdf"])[..8], StringComparison.Ordinal);
        // the stack is described as for a plan: dithering lets a single dark pass with less loss
        JsonElement dithered = folder
            .Command.Run(
                "darks",
                "check",
                master,
                "--against",
                "fresh",
                "--lights",
                "40",
                "--dithers",
                "20",
                "--rejection",
                "sigma-clip",
                "--json"
            )
            .Json;
        Assert.True(
            dithered.GetProperty("masters")[0].GetProperty("loss").GetProperty("value").GetDouble()
                <= one.GetProperty("loss").GetProperty("value").GetDouble() / 5
        );
        Assert.Contains(dithered.GetProperty("assumptions").EnumerateArray(), a =>
            a.GetProperty("name").GetString() == "ditherPositions" && a.GetProperty("source").GetString() == "option"
        );
        // one wrong path does not stop the rest
        JsonElement[] both =
        [
            .. folder
                .Command.Run("darks", "check", master, "nowhere.fits", "--against", "fresh", "--json")
                .Json.GetProperty("masters")
                .EnumerateArray(),
        ];
        Assert.Equal(one.GetProperty("verdict").GetString(), both[0].GetProperty("verdict").GetString());
        Assert.Contains("nowhere.fits", both[1].GetProperty("reason").GetString(), StringComparison.Ordinal);
        Assert.Contains(
            "--against",
            folder.Command.Run("darks", "check", master).Expect(ExitCodes.WrongCommandLine).Error,
            StringComparison.Ordinal
        );
    }
}
