using System.Diagnostics;
using System.Globalization;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Fits;

namespace SensorProfile.Cli.Tests.Hostile;

/// <summary>What happens to a machine at night: the input stays as it was, the next run believes nothing half-made, and
/// every ending has its exit code.</summary>
public sealed class FaultTests : IDisposable
{
    private static readonly TimeSpan patience = TimeSpan.FromMinutes(2);
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>A pipe that nobody writes to was opened, and the program waited for ever.</summary>
    [PipesAndDevicesFact]
    public void PipesDevicesAndLoopsOfLinksAreNoFrames()
    {
        Frame("dark_1.fits");
        Shell("mkfifo night/pipe.fits night/pipe.orf night/pipe; mkfifo pipe.fits");
        foreach (string device in new[] { "zero", "full", "null" })
            File.CreateSymbolicLink(folder[$"night/{device}.fits"], $"/dev/{device}");
        File.CreateSymbolicLink(folder["night/a.fits"], "b.fits");
        File.CreateSymbolicLink(folder["night/b.fits"], "a.fits");
        Directory.CreateSymbolicLink(folder["night/up"], "..");
        CommandRun run = InTime("survey", "night", "pipe.fits", "--json");
        Assert.True(run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell, run.Error);
        Assert.Equal(1, run.Json.GetProperty("sets").GetArrayLength());
        string rejected = run.Json.GetProperty("rejected").ToString();
        foreach (string name in new[] { "pipe.fits", "zero.fits", "full.fits", "null.fits" })
            Assert.Contains(name, rejected, StringComparison.Ordinal);
    }

    /// <summary>128 open files are allowed; the runtime with its libraries keeps 60 to 90 of them for itself.</summary>
    [Fact]
    public void FiveThousandTinyFilesAreSurveyedWithFewOpenOnes()
    {
        Frame("dark_0.fits");
        byte[] one = File.ReadAllBytes(folder["night/dark_0.fits"]);
        for (int i = 1; i < 5000; i++)
        {
            one[^1] = (byte)i; // in the padding: no two are the same file
            BitConverter.TryWriteBytes(one.AsSpan(2880 + 2), (ushort)i);
            File.WriteAllBytes(folder[string.Create(CultureInfo.InvariantCulture, $"night/dark_{i}.fits")], one);
        }
        CommandRun run = folder.Command.Shell("ulimit -n 128; $SP survey night --json");
        Assert.True(run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell, run.Error);
        Assert.Equal(5000, run.Json.GetProperty("sets").EnumerateArray().Sum(s => s.GetProperty("frames").GetInt32()));
    }

    /// <summary>The same results with few open files and with a heap of 512 MB.</summary>
    [Theory]
    [InlineData("ulimit -n 128; $SP characterise night --out small")]
    [InlineData("DOTNET_GCHeapHardLimit=0x20000000 $SP characterise night --out small")]
    public void LittleRoomChangesNothing(string line)
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.Full);
        SortedDictionary<string, string> before = TemporaryFolder.Digests(folder["night"]);
        SensorProfileCommand command = Dated();
        command.Run("characterise", "night", "--out", "large").Expect(ExitCodes.Answered);
        command.Shell(line).Expect(ExitCodes.Answered);
        Assert.Equal(TemporaryFolder.Digests(folder["large"]), TemporaryFolder.Digests(folder["small"]));
        Assert.Equal(before, TemporaryFolder.Digests(folder["night"]));
    }

    /// <summary>A disk that is full after so many kilobytes: at the start, among the maps, at the report.</summary>
    [FullDiskTheory]
    [InlineData(8)]
    [InlineData(200)]
    [InlineData(500)]
    [InlineData(900)]
    public void AFullDiskIsExitCode4AndLeavesNothing(int kilobytes)
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.Full);
        FullDisk.Mount(folder["small"], kilobytes);
        try
        {
            CommandRun run = Dated()
                .Run("characterise", "night", "--out", "small/out")
                .Expect(ExitCodes.UnwritableOutput);
            Assert.Contains("small/out", run.Error, StringComparison.Ordinal);
            Assert.Empty(Directory.GetFileSystemEntries(folder["small"]));
        }
        finally
        {
            FullDisk.Unmount(folder["small"]);
        }
    }

    [FullDiskFact]
    public void AFullArchiveIsExitCode4AndTheNextRunKeepsItWhole()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.Full);
        FullDisk.Mount(folder["small"], 60);
        try
        {
            Dated()
                .Run("characterise", "night", "--out", "first", "--archive", "small/archive")
                .Expect(ExitCodes.UnwritableOutput);
            Assert.Empty(Directory.GetFiles(folder["small"], "profile.json", SearchOption.AllDirectories));
        }
        finally
        {
            FullDisk.Unmount(folder["small"]);
        }
    }

    /// <summary>Killed without warning at random moments: what has its final name is whole, and the next run succeeds.</summary>
    [Fact]
    public void AfterAKillTheNextRunBelievesNothingHalfMade()
    {
        int kills = Environment.GetEnvironmentVariable("SENSORPROFILE_LONG") is null ? 4 : 50;
        SimulatedNight.Write(folder["night"], SimulatedNight.Full);
        SortedDictionary<string, string> before = TemporaryFolder.Digests(folder["night"]);
        var clock = Stopwatch.StartNew();
        Characterise("whole", "kept").Expect(ExitCodes.Answered);
        TimeSpan usual = clock.Elapsed;
        SortedDictionary<string, string> whole = TemporaryFolder.Digests(folder["whole"]),
            kept = TemporaryFolder.Digests(folder["kept"]);
        var random = new Random(1);
        for (int i = 0; i < kills; i++)
        {
            string to = $"out{i}",
                archive = $"archive{i}";
            using (Process process = Start(to, archive))
            {
                if (!process.WaitForExit(usual * (0.2 + 0.9 * random.NextDouble())))
                    process.Kill();
                process.WaitForExit();
            }
            if (Directory.Exists(folder[to]))
                Assert.Equal(whole, TemporaryFolder.Digests(folder[to]));
            string[] profiles = Directory.Exists(folder[archive])
                ? Directory.GetFiles(folder[archive], "profile.json", SearchOption.AllDirectories)
                : [];
            if (profiles.Length > 0)
                Assert.Equal(kept, TemporaryFolder.Digests(folder[archive]));
            CommandRun again = Dated().Run("characterise", "night", "--out", to, "--archive", archive, "--overwrite");
            again.Expect(ExitCodes.Answered);
            Assert.Equal(whole, TemporaryFolder.Digests(folder[to]));
            Assert.Equal(
                kept,
                new SortedDictionary<string, string>(
                    TemporaryFolder.Digests(folder[archive]).Where(f => kept.ContainsKey(f.Key)).ToDictionary(),
                    StringComparer.Ordinal
                )
            );
        }
        Assert.Equal(before, TemporaryFolder.Digests(folder["night"]));
    }

    [Fact]
    public void AskedToEndItEndsWith130AndLeavesNothing()
    {
        SimulatedNight.Write(folder["night"], Large());
        using Process process = folder.Command.Start("characterise", "night", "--out", "out");
        process.StandardError.ReadLine();
        Shell($"kill -TERM {process.Id.ToString(CultureInfo.InvariantCulture)}");
        SensorProfileCommand.Finish(process).Expect(ExitCodes.Interrupted);
        Assert.Equal([folder["night"]], Directory.GetFileSystemEntries(folder.Path));
    }

    /// <summary>A file that somebody shortens, replaces or takes away while it is measured is named or left out.</summary>
    [Theory]
    [InlineData("truncate -s 5000 $f")]
    [InlineData("truncate -s 0 $f")]
    [InlineData("rm $f")]
    [InlineData("cp night/bias_-10C_0.001s_001.fits tmp; mv tmp $f")]
    public void AnInputThatChangesWhileItIsReadIsNoFaultOfTheProgram(string change)
    {
        SimulatedNight.Write(folder["night"], Large());
        using Process process = folder.Command.Start("characterise", "night", "--out", "out", "--quick");
        process.StandardError.ReadLine();
        Thread.Sleep(300);
        Shell($"for f in night/dark_*_001.fits night/flat*_002.fits; do {change}; done");
        CommandRun run = SensorProfileCommand.Finish(process);
        Assert.True(
            run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell or ExitCodes.UnreadableInput,
            $"{run.ExitCode}: {run.Error}"
        );
        if (run.ExitCode == ExitCodes.UnreadableInput)
            Assert.False(Directory.Exists(folder["out"]));
    }

    [Theory]
    [InlineData("$SP schema >&-")]
    [InlineData("$SP survey night --json >&-")]
    public void AClosedStandardOutputIsNoFaultOfTheProgram(string line)
    {
        Frame("dark_1.fits");
        CommandRun run = folder.Command.Shell(line);
        Assert.NotEqual(ExitCodes.ProgramFault, run.ExitCode);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AReaderThatStopsReadingIsNoFaultOfTheProgram()
    {
        CommandRun run = folder.Command.Shell("$SP schema | head -c 10 > /dev/null; echo done").Expect(0);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    /// <summary>Two runs into one archive at the same moment: it holds the session once, and whole.</summary>
    [Fact]
    public void TwoRunsKeepOneSessionOnce()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.Full);
        using Process one = Start("one", "archive"),
            two = Start("two", "archive");
        CommandRun[] runs = [SensorProfileCommand.Finish(one), SensorProfileCommand.Finish(two)];
        Assert.Contains(runs, r => r.ExitCode == ExitCodes.Answered);
        Assert.All(runs, r => Assert.True(r.ExitCode is ExitCodes.Answered or ExitCodes.UnwritableOutput, r.Error));
        Assert.Single(Directory.GetFiles(folder["archive"], "profile.json", SearchOption.AllDirectories));
        folder.Command.Run("drift", "archive", "one", "--out", "drift").Expect(ExitCodes.CannotTell);
    }

    [Fact]
    public void AHomeThatCannotBeWrittenIsSaidOnlyWhereItIsNeeded()
    {
        Frame("dark_1.fits");
        SensorProfileCommand command = folder.Command with
        {
            Environment = new Dictionary<string, string?>
            {
                ["HOME"] = "/proc/1",
                ["XDG_CONFIG_HOME"] = "/proc/1/none",
            },
        };
        Assert.True(command.Run("survey", "night").ExitCode is ExitCodes.Answered or ExitCodes.CannotTell);
        CommandRun setup = command.Run("setup", "--focal-ratio", "5").Expect(ExitCodes.UnwritableOutput);
        Assert.Contains("/proc/1/none", setup.Error, StringComparison.Ordinal);
    }

    private CommandRun InTime(params string[] arguments)
    {
        using Process process = folder.Command.Start(arguments);
        Task<CommandRun> run = Task.Run(() => SensorProfileCommand.Finish(process));
        if (!run.Wait(patience))
        {
            process.Kill();
            Assert.Fail("It waits for ever.");
        }
        return run.Result;
    }

    // a process of its own, like those that are killed: how long it takes says when
    private CommandRun Characterise(string to, string archive) =>
        (Dated() with { OnItsOwn = true }).Run("characterise", "night", "--out", to, "--archive", archive);

    private Process Start(string to, string archive) =>
        Dated().Start("characterise", "night", "--out", to, "--archive", archive);

    private SensorProfileCommand Dated() =>
        folder.Command with
        {
            Environment = new Dictionary<string, string?> { ["SOURCE_DATE_EPOCH"] = "1949904000" },
        };

    private static string Large() =>
        SimulatedNight.Full.Replace(
            "\"width\": 160, \"height\": 120",
            "\"width\": 800, \"height\": 600",
            StringComparison.Ordinal
        );

    private void Frame(string name)
    {
        Directory.CreateDirectory(folder["night"]);
        FitsWriter.Write(
            folder[$"night/{name}"],
            new FitsImage<ushort>(
                16,
                12,
                new ushort[16 * 12],
                [FitsCard.Of("IMAGETYP", "dark"), FitsCard.Of("EXPTIME", 30.0), FitsCard.Of("CCD-TEMP", -10.0)]
            )
        );
    }

    private void Shell(string line)
    {
        using Process process = Process.Start(
            new ProcessStartInfo("/bin/sh", ["-c", line]) { WorkingDirectory = folder.Path }
        )!;
        process.WaitForExit();
    }
}
