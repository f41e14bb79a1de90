using SensorProfile.Cli.Tests.Running;
using SensorProfile.Fits;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Cli.Tests.Hostile;

/// <summary>Names from files, headers, tables and profiles, written into pages, tables, a terminal and folders: nothing
/// runs, nothing leaves its place.</summary>
public sealed class InjectionTests : IDisposable
{
    private const string Evil = "\u001b]0;x\u0007\u001b[2J\u202E<script>alert(1)</script>\"'&=1+1|../../x";

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void NamesOfFilesReachTheTerminalAsText()
    {
        Frame("a\u001b[2J\n.fits", "dark");
        CommandRun run = folder.Command.Run("survey", "night", "--explain");
        AssertPlain(run.Output);
        AssertPlain(run.Error);
        run = folder.Command.Run("characterise", "night", "--out", "results");
        AssertPlain(run.Output);
        AssertPlain(run.Error);
    }

    [Theory]
    [InlineData("=HYPERLINK(1).fits")]
    [InlineData("+1.fits")]
    [InlineData("-1.fits")]
    [InlineData("@SUM(1).fits")]
    [InlineData("'=1.fits")]
    public void ANameThatIsAFormulaIsTextInTheCaptureTableAndIsFoundAgain(string name)
    {
        Frame(name, "dark");
        folder.Command.Run("survey", "night", "--table", "t.csv").Expect(ExitCodes.Answered);
        string table = File.ReadAllText(folder["t.csv"]);
        Assert.Contains($"\r\n'{name},", table, StringComparison.Ordinal);
        File.WriteAllText(folder["t.csv"], table.Replace(",dark,", ",bias,", StringComparison.Ordinal));
        CommandRun again = folder.Command.Run("survey", "night", "--table", "t.csv", "--overwrite", "--json");
        if (again.ExitCode == ExitCodes.WrongCommandLine) // reading and writing one table is refused
            return;
        Assert.DoesNotContain("capture-table-no-file", again.Output, StringComparison.Ordinal);
    }

    /// <summary>A profile from elsewhere: its words stand in every page and table as words.</summary>
    [Fact]
    public void WordsOfAProfileAreWordsInPagesAndTables()
    {
        CameraProfile profile = Hostile();
        ProfileFile.Write(folder["profile.json"], profile);
        CommandRun run = folder.Command.Run("report", "profile.json", "--out", "report", "--explain");
        Assert.True(run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell, run.Error);
        AssertPlain(run.Output);
        string page = File.ReadAllText(folder["report/report.html"]);
        Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;alert", page, StringComparison.Ordinal);
        Assert.DoesNotContain(page, c => c is '\u001b' or '\u202E' or '\u0007');
        foreach (string file in Directory.GetFiles(folder["report/tables"], "*.csv"))
            Assert.All(File.ReadAllText(file).Split('\n', ','), cell =>
                Assert.False(cell.TrimStart('"').StartsWith('='), $"{file}: {cell}")
            );
        Assert.DoesNotContain("/JavaScript", File.ReadAllText(folder["report/report.pdf"]), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path, "x", SearchOption.AllDirectories));
    }

    [Theory]
    [InlineData("../../x")]
    [InlineData("..")]
    [InlineData("/etc/x")]
    [InlineData("C:\\x")]
    [InlineData("CON")]
    [InlineData("nul.txt")]
    [InlineData("LPT1")]
    [InlineData("a\0b\n")]
    public void ACameraIsKeptInsideTheArchiveWhateverItsName(string name) => KeepsInside(name);

    [Fact]
    public void ACameraOfThreeHundredLettersIsKept() => KeepsInside(new string('ä', 300));

    private void KeepsInside(string name)
    {
        Directory.CreateDirectory(folder["in"]);
        TarnProfile.Write(folder["in/profile.json"]);
        CameraProfile profile = ProfileFile.Read(folder["in/profile.json"]);
        ProfileFile.Write(folder["in/profile.json"], profile with { Camera = profile.Camera with { Name = name } });
        SortedDictionary<string, string> before = TemporaryFolder.Digests(folder["in"]);
        Directory.CreateDirectory(folder["deep/er"]);
        CommandRun run = folder.Command.Run("drift", "in", "--out", "d", "--archive", "deep/er/archive");
        Assert.True(run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell, run.Error);
        Assert.Equal(before, TemporaryFolder.Digests(folder["in"]));
        Assert.All(Directory.GetFileSystemEntries(folder.Path), entry =>
            Assert.Contains(Path.GetFileName(entry), new[] { "in", "deep", "d", ".config" })
        );
        Assert.Equal([folder["deep/er"]], Directory.GetFileSystemEntries(folder["deep"]));
        string kept = Assert.Single(
            Directory.GetFiles(folder["deep/er/archive"], "profile.json", SearchOption.AllDirectories)
        );
        string sensor = Path.GetRelativePath(folder["deep/er/archive"], kept).Split('/')[0];
        Assert.Matches("^[\\p{L}\\p{N}._-]{1,80}$", sensor);
        Assert.DoesNotMatch("^(?i:con|prn|aux|nul|com[0-9]|lpt[0-9])([.]|$)", sensor);
    }

    private CameraProfile Hostile()
    {
        TarnProfile.Write(folder["tarn.json"]);
        CameraProfile profile = ProfileFile.Read(folder["tarn.json"]);
        return profile with
        {
            Camera = profile.Camera with { Name = Evil },
            Findings = [new Finding(Evil, Severity.Warning, Evil, ["=" + Evil])],
            Frames = profile.Frames with { Rejected = [new RejectedFile("=cmd|" + Evil, "@" + Evil)] },
            Modes = [.. profile.Modes.Select(m => m with { Settings = m.Settings with { Readout = "../" + Evil } })],
        };
    }

    private void Frame(string name, string kind)
    {
        Directory.CreateDirectory(folder["night"]);
        FitsWriter.Write(
            Path.Combine(folder["night"], name),
            new FitsImage<ushort>(
                16,
                12,
                new ushort[16 * 12],
                [FitsCard.Of("IMAGETYP", kind), FitsCard.Of("EXPTIME", 30.0), FitsCard.Of("CCD-TEMP", -10.0)]
            )
        );
    }

    private static void AssertPlain(string text) =>
        Assert.DoesNotContain(text, c => (char.IsControl(c) && c != '\n') || c == '\u202E');
}
