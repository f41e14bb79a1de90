using System.Net;
using System.Text;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

/// <summary>--page: an answer as a folder of three files.</summary>
public sealed class PageFolderTests : IDisposable
{
    private static readonly string[] question = ["setpoint", "profile.json", "--exposure", "300", "--sky", "2"];

    private readonly TemporaryFolder folder = new();

    public PageFolderTests() => TarnProfile.Write(folder["profile.json"]);

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("setpoint", "setpoint profile.json --exposure 300 --sky 2")]
    [InlineData("exposure", "exposure profile.json --sky 2")]
    [InlineData("dark-tolerance", "darks match profile.json --exposure 300 --lights 40 --sky 2")]
    [InlineData("darks-plan", "darks plan profile.json --exposure 300 --lights 40 --sky 2")]
    [InlineData("shots", "shots --minutes 90")]
    public void TheAnswerIsWrittenAsAPageAndItsPlaceIsSaid(string name, string arguments)
    {
        CommandRun run = folder
            .Command.Run([.. arguments.Split(' '), "--page", "pages", "--explain"])
            .Expect(ExitCodes.Answered);
        Assert.Equal([$"{name}.csv", $"{name}.html", $"{name}.pdf"], Names("pages"));
        // units do not break there
        Assert.Contains(
            run.FirstLine,
            WebUtility.HtmlDecode(File.ReadAllText(folder[$"pages/{name}.html"])).Replace('\u00A0', ' '),
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "%PDF-",
            Encoding.Latin1.GetString(File.ReadAllBytes(folder[$"pages/{name}.pdf"])),
            StringComparison.Ordinal
        );
        Assert.True(File.ReadAllLines(folder[$"pages/{name}.csv"]).Length > 1);
        Assert.All(Names("pages"), file =>
            Assert.Contains(Path.Combine("pages", file), run.Output, StringComparison.Ordinal)
        );
        Assert.Equal(
            folder.Command.Run([.. arguments.Split(' '), "--explain"]).Output,
            run.Output.Remove(run.Output.IndexOf("\nNumbers:", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void AFolderThatExistsIsRefusedAndFilledOnlyWithOverwrite()
    {
        Directory.CreateDirectory(folder["pages"]);
        File.WriteAllText(folder["pages/setpoint.csv"], "old");
        File.WriteAllText(folder["pages/mine.txt"], "mine");
        SortedDictionary<string, string> before = TemporaryFolder.Digests(folder.Path);
        CommandRun refused = folder.Command.Run([.. question, "--page", "pages"]).Expect(ExitCodes.UnwritableOutput);
        Assert.Equal("", refused.Output);
        Assert.Contains("pages exists", refused.Error, StringComparison.Ordinal);
        Assert.Contains("--overwrite", refused.Error, StringComparison.Ordinal);
        Assert.Equal(before, TemporaryFolder.Digests(folder.Path));
        folder.Command.Run([.. question, "--page", "pages", "--overwrite"]).Expect(ExitCodes.Answered);
        Assert.Equal(["mine.txt", "setpoint.csv", "setpoint.html", "setpoint.pdf"], Names("pages"));
        Assert.Equal("mine", File.ReadAllText(folder["pages/mine.txt"]));
        Assert.NotEqual("old", File.ReadAllText(folder["pages/setpoint.csv"]));
    }

    [Fact]
    public void AQuestionThatIsRefusedLeavesNothing()
    {
        SortedDictionary<string, string> before = TemporaryFolder.Digests(folder.Path);
        folder
            .Command.Run("setpoint", "profile.json", "--exposure", "-5", "--page", "pages")
            .Expect(ExitCodes.WrongCommandLine);
        Assert.Equal(before, TemporaryFolder.Digests(folder.Path));
        Assert.Empty(Directory.GetDirectories(folder.Path));
    }

    private IEnumerable<string> Names(string pages) =>
        Directory.GetFiles(folder[pages]).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal);
}
