using System.Diagnostics;
using System.Text.Json;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

public sealed class SimulateTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public SimulateTests() => File.WriteAllText(folder["camera.json"], SimulatedNight.DarksOnly);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void TheSameSeedGivesTheSameBytesAndTruthStandsBesideThem()
    {
        CommandRun run = folder
            .Command.Run("simulate", "camera.json", "--out", "a b", "--seed", "7")
            .Expect(ExitCodes.Answered);
        Assert.Equal("6 frames of Tarn-9M are in a b; truth.json beside them holds the true values.", run.FirstLine);
        folder.Command.Run("simulate", "camera.json", "--out", "again", "--seed", "7").Expect(ExitCodes.Answered);
        Assert.Equal(TemporaryFolder.Digests(folder["a b"]), TemporaryFolder.Digests(folder["again"]));
        Assert.Equal(
            7,
            JsonDocument.Parse(File.ReadAllText(folder["a b/truth.json"])).RootElement.GetProperty("seed").GetInt32()
        );
    }

    [Fact]
    public void AnExistingFolderIsRefusedAndOverwrittenOnlyWhenAsked()
    {
        Directory.CreateDirectory(folder["out"]);
        File.WriteAllText(folder["out/diary.txt"], "clear until two");
        CommandRun refused = folder
            .Command.Run("simulate", "camera.json", "--out", "out")
            .Expect(ExitCodes.UnwritableOutput);
        Assert.Equal(
            "sensorprofile: The output folder out exists. Choose another name for --out, or add --overwrite to "
                + "replace earlier results in it.\n",
            refused.Error
        );

        folder.Command.Run("simulate", "camera.json", "--out", "out", "--overwrite").Expect(ExitCodes.Answered);
        Assert.Equal("clear until two", File.ReadAllText(folder["out/diary.txt"]));
        File.WriteAllText(
            folder["camera.json"],
            SimulatedNight.DarksOnly.Replace("\"exposure\": 300", "\"exposure\": 200", StringComparison.Ordinal)
        );
        folder.Command.Run("simulate", "camera.json", "--out", "out", "--overwrite").Expect(ExitCodes.Answered);
        // frames of the earlier run would be pooled with the new ones
        Assert.Empty(Directory.GetFiles(folder["out"], "*_300s_*"));
        Assert.True(File.Exists(folder["out/diary.txt"]));
    }

    [Theory]
    [InlineData("{ \"width\": 10 }", "camera.json")]
    [InlineData("no json", "camera.json")]
    [InlineData("{ \"width\": 10, \"height\": 10, \"redNoise\": 3, \"shots\": [] }", "redNoise")]
    public void ADescriptionThatCannotBeReadIsExitCode3AndNamesThePlace(string json, string named)
    {
        File.WriteAllText(folder["camera.json"], json);
        CommandRun run = folder
            .Command.Run("simulate", "camera.json", "--out", "out")
            .Expect(ExitCodes.UnreadableInput);
        Assert.StartsWith("sensorprofile: camera.json", run.Error, StringComparison.Ordinal);
        Assert.Contains(named, run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.TrimEnd('\n').Split('\n'));
        Assert.False(Directory.Exists(folder["out"]));
    }

    [Fact]
    public void APlaceThatCannotBeWrittenIsExitCode4()
    {
        File.WriteAllText(folder["file"], "");
        foreach (string place in new[] { "file", "file/out" })
        {
            CommandRun run = folder
                .Command.Run("simulate", "camera.json", "--out", place)
                .Expect(ExitCodes.UnwritableOutput);
            Assert.Contains(place, run.Error, StringComparison.Ordinal);
            Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
        }
    }

    [FullDiskFact]
    public void AFullDiskIsExitCode4AndLeavesNothing()
    {
        FullDisk.Mount(folder["small"], kilobytes: 64);
        try
        {
            CommandRun run = folder
                .Command.Run("simulate", "camera.json", "--out", "small/out")
                .Expect(ExitCodes.UnwritableOutput);
            Assert.Contains(
                "small/out: the results cannot be written there; free some space or choose another place",
                run.Error,
                StringComparison.Ordinal
            );
            Assert.Empty(Directory.GetFileSystemEntries(folder["small"]));
        }
        finally
        {
            FullDisk.Unmount(folder["small"]);
        }
    }

    [Fact]
    public void InterruptedWorkEndsWith130AndLeavesNothing()
    {
        File.WriteAllText(
            folder["camera.json"],
            SimulatedNight
                .DarksOnly.Replace(
                    "\"width\": 80, \"height\": 60",
                    "\"width\": 2000, \"height\": 2000",
                    StringComparison.Ordinal
                )
                .Replace("\"count\": 3", "\"count\": 400", StringComparison.Ordinal)
        );
        using Process process = folder.Command.Start("simulate", "camera.json", "--out", "out");
        string? line = process.StandardError.ReadLine();
        Assert.Equal("simulating, 800 frames …", line);
        using (
            Process kill = Process.Start(
                "kill",
                ["-INT", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]
            )
        )
            kill.WaitForExit();
        CommandRun run = SensorProfileCommand.Finish(process).Expect(ExitCodes.Interrupted);
        Assert.Equal("sensorprofile: interrupted; nothing unfinished was kept.\n", run.Error);
        Assert.Equal("", run.Output);
        Assert.Equal([folder["camera.json"]], Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public async Task TwoRunsAtOnceDoNotDisturbEachOther()
    {
        string[] names = ["one", "two"];
        CommandRun[] runs = await Task.WhenAll(
            names.Select(name => Task.Run(() => folder.Command.Run("simulate", "camera.json", "--out", name)))
        );
        Assert.All(runs, run => run.Expect(ExitCodes.Answered));
        Assert.Equal(TemporaryFolder.Digests(folder["one"]), TemporaryFolder.Digests(folder["two"]));
    }
}
