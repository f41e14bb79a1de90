using System.Text.RegularExpressions;

namespace SensorProfile.Tests.HouseRules;

/// <summary>House rules that the compiler does not hold.</summary>
public sealed partial class SourceRulesTests
{
    [Theory]
    [InlineData(@"\bDateTime(Offset)?\.(Now|UtcNow|Today)\b", "inject a TimeProvider")]
    [InlineData(@"\bnew Random\(\)", "seed it")]
    [InlineData(@"\bThread\.Sleep\(", "nothing here waits for the clock")]
    [InlineData(@"\bNotImplemented" + @"Exception\b", "finish it")]
    [InlineData(@"\b(TO" + @"DO|FIX" + @"ME|HA" + @"CK)\b", "finish it")]
    [InlineData(@"#(end)?region\b", "split the file by subject")]
    public void NoSourceFileHas(string pattern, string why) => AssertNowhere(SourceTree.SourceFiles(), pattern, why);

    [Fact]
    public void OnlyTheCommandLineWritesToTheConsole() =>
        AssertNowhere(
            SourceTree
                .SourceFiles()
                .Where(f => !SourceTree.Relative(f).StartsWith("src/SensorProfile.Cli/", StringComparison.Ordinal)),
            @"\bConsole\.(Write|Error|Out|Read)",
            "return it, or report it as a finding"
        );

    [Fact]
    public void NoFileIsLongerThan500Lines()
    {
        var tooLong = SourceTree
            .SourceFiles()
            .Concat(SourceTree.TestFiles())
            .Select(f => (File: SourceTree.Relative(f), Lines: File.ReadLines(f).Count()))
            .Where(f => f.Lines > 500)
            .Select(f => $"{f.File}: {f.Lines}");
        Assert.Empty(tooLong);
    }

    /// <summary>The build installs what a test needs; once a missing package failed five tests there and nowhere else.</summary>
    [Fact]
    public void TheBuildInstallsEveryProgramThatATestNeeds()
    {
        string build = File.ReadAllText(Path.Combine(SourceTree.Root, ".ci", "run"));
        string[] packages =
        [
            .. SourceTree
                .TestFiles()
                .SelectMany(f => NeededPackage().Matches(File.ReadAllText(f)))
                .Select(m => m.Groups["package"].Value)
                .Distinct(),
        ];
        Assert.Contains("libcfitsio-bin", packages);
        Assert.All(packages, package => Assert.Contains($"+=({package})", build, StringComparison.Ordinal));
    }

    [GeneratedRegex("""\[NeedsProgramFact\([^,\]]+, "(?<package>[^"]+)["]""")]
    private static partial Regex NeededPackage();

    /// <summary>The library states facts; options and commands are the command line's.</summary>
    [Fact]
    public void TheLibraryNamesNoOptionAndNoCommand()
    {
        string library = Path.Combine(SourceTree.Root, "src", "SensorProfile");
        string[] said =
        [
            .. SourceTree
                .SourceFiles()
                .Where(f => SourceTree.Relative(f).StartsWith("src/SensorProfile/", StringComparison.Ordinal))
                .Append(Path.Combine(library, "findings.json"))
                .Append(Path.Combine(library, "Profiles", "descriptions.json"))
                .SelectMany(f =>
                    File.ReadAllLines(f)
                        .Where(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal) && NamesACommand(l))
                        .Select(l => $"{SourceTree.Relative(f)}: {l.Trim()}")
                ),
        ];
        Assert.Empty(said);
    }

    [Theory]
    [InlineData("take the master that 'darks predict' computes")]
    [InlineData("give the profile with 'characterise'")]
    [InlineData("give a folder that characterise wrote")]
    [InlineData("run setpoint again")]
    [InlineData("use --temperatures hot-pixels")]
    [InlineData("sensorprofile demo makes one")]
    public void ASentenceThatNamesACommandIsSeen(string sentence) =>
        Assert.True(NamesACommand($"            \"{sentence}\","));

    [Theory]
    [InlineData("characterise the camera again")]
    [InlineData("Drift in time and a report of it cannot be judged")]
    [InlineData("the demo's night, {Night}")]
    [InlineData("a survey shows what was found")]
    public void OrdinaryWordsAreNoCommand(string sentence) =>
        Assert.False(NamesACommand($"            \"{sentence}\","));

    private static bool NamesACommand(string line) => CommandLineWords().IsMatch(line);

    private const string Commands =
        "(darks (plan|match|check|predict)|flats plan|shots|survey|characterise|report|setpoint|exposure|drift|fleet|desk|"
        + "simulate|setup|schema|demo|compare|man|completion)";

    // an option; a command in quotes, as the one who does something, or as what is to be run
    [GeneratedRegex(
        """["'( ]--[a-z][a-z-]+|sensorprofile [a-z]|'"""
            + Commands
            + """'|`"""
            + Commands
            + """`|(?<!\b([Aa]|[Tt]he|[Tt]his|[Ii]ts) )\b"""
            + Commands
            + """ (wrote|writes|prints|printed|makes|made|says|shows|computes)\b|\b[Rr]un """
            + Commands
            + """\b"""
    )]
    private static partial Regex CommandLineWords();

    [Fact]
    public void NoFolderHoldsMoreThan25Files()
    {
        var tooFull = SourceTree
            .SourceFiles()
            .Concat(SourceTree.TestFiles())
            .GroupBy(f => Path.GetDirectoryName(SourceTree.Relative(f)))
            .Where(g => g.Count() > 25)
            .Select(g => $"{g.Key}: {g.Count()} files; give it rooms by subject");
        Assert.Empty(tooFull);
    }

    /// <summary>Rows of a table that a reader does not have ("X-5") and pages that stand elsewhere say nothing.</summary>
    [Fact]
    public void NoCommentPointsAtWhatTheProjectDoesNotHold()
    {
        var dangling = new Regex(@"//.*((?<![\w-])[A-Z]-\d{1,2}(?![\w-])|\b(?!DEVELOPERS|README)\w+\.md\b)");
        Assert.Empty(
            SourceTree
                .SourceFiles()
                .Concat(SourceTree.TestFiles())
                .SelectMany(f => File.ReadLines(f).Select((line, i) => (File: SourceTree.Relative(f), i, line)))
                .Where(l => dangling.IsMatch(l.line) && !l.line.Contains("(\"X-5\")", StringComparison.Ordinal))
                .Select(l => $"{l.File}:{l.i + 1}: {l.line.Trim()}")
        );
    }

    [Fact]
    public void NoLineIsWiderThan140Columns()
    {
        var tooWide = SourceTree
            .SourceFiles()
            .Concat(SourceTree.PageFiles())
            .Concat(SourceTree.TestFiles())
            .Select(f => (File: SourceTree.Relative(f), Lines: File.ReadLines(f).Count(l => l.Length > 140)))
            .Where(f => f.Lines > WideLines.Allowed.GetValueOrDefault(f.File))
            .Select(f => $"{f.File}: {f.Lines} wide lines, {WideLines.Allowed.GetValueOrDefault(f.File)} allowed");
        Assert.Empty(tooWide);
    }

    [Fact]
    public void HalfTheFilesAreShort()
    {
        int[] lengths = [.. SourceTree.SourceFiles().Select(f => File.ReadLines(f).Count()).Order()];
        Assert.InRange(lengths[lengths.Length / 2], 1, 120);
    }

    [Fact]
    public void NoFileThatIsReadInAReviewIsOverAMebibyte()
    {
        var tooLarge = new[] { "reports", "src", "tests", "demo-data", "notebooks" }
            .SelectMany(f =>
                Directory.EnumerateFiles(Path.Combine(SourceTree.Root, f), "*", SearchOption.AllDirectories)
            )
            .Where(f =>
                !SourceTree.Relative(f).Split('/').Any(p => p is "bin" or "obj" or "TestResults")
                && new FileInfo(f).Length > 1 << 20
            )
            .Select(SourceTree.Relative);
        Assert.Empty(tooLarge);
    }

    [Fact]
    public void NoFolderHidesItsSubjectBehindAWord() =>
        Assert.DoesNotContain(SourceTree.SourceFiles().Concat(SourceTree.TestFiles()), f =>
            SourceTree
                .Relative(f)
                .Split('/')
                .Any(p =>
                    Path.GetFileNameWithoutExtension(p) is "Helpers" or "Utils" or "Utilities" or "Common" or "Misc"
                )
        );

    [Fact]
    public void TheTopLevelHoldsOnlyWhatBelongsThere()
    {
        HashSet<string> allowed =
        [
            "README.md",
            "DEVELOPERS.md",
            "SensorProfile.sln",
            "src",
            "tests",
            "notebooks",
            "reports",
            "demo-data",
            "LICENSE",
            "Directory.Build.props",
            "Directory.Packages.props",
            "Directory.Build.targets",
            "global.json",
            "nuget.config",
        ];
        var others = Directory
            .EnumerateFileSystemEntries(SourceTree.Root)
            .Select(e => Path.GetFileName(e))
            .Where(e =>
                !e.StartsWith('.')
                && !allowed.Contains(e)
                && e
                    is not (
                        "TestResults"
                        or "BenchmarkDotNet.Artifacts"
                        or "sensorprofile-demo"
                        or "fell-24c"
                        or "fell-24c-frames"
                    )
            ); // what the README's commands leave where they are run
        Assert.Empty(others);
    }

    private static void AssertNowhere(IEnumerable<string> files, string pattern, string why)
    {
        var rule = new Regex(pattern);
        var hits = files
            .SelectMany(f => File.ReadLines(f).Select((line, i) => (File: f, Line: i + 1, Text: line)))
            .Where(l => rule.IsMatch(l.Text))
            .Select(l => $"{SourceTree.Relative(l.File)}:{l.Line}: {l.Text.Trim()} ({why})");
        Assert.Empty(hits);
    }
}
