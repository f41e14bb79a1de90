using System.Text.RegularExpressions;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Reporting.Handbook;

namespace SensorProfile.Cli.Tests.Handbook;

public sealed partial class HelpCommandTests
{
    [Fact]
    public void WithoutATopicAllAreListed()
    {
        CommandRun run = new SensorProfileCommand().Run("help").Expect(ExitCodes.Answered);
        Assert.StartsWith("Handbook\n========\n", run.Output, StringComparison.Ordinal);
        Assert.All(HandbookTopics.All, topic =>
            Assert.Contains(
                $"{topic.Title} ({topic.Name})",
                run.Output.ReplaceLineEndings(" "),
                StringComparison.Ordinal
            )
        );
    }

    [Fact]
    public void ACommandAsATopicIsItsOwnHelp() =>
        Assert.Equal(
            new SensorProfileCommand().Run("darks", "match", "--help").Expect(ExitCodes.Answered).Output,
            new SensorProfileCommand().Run("help", "darks", "match").Expect(ExitCodes.Answered).Output
        );

    [Theory]
    [InlineData("black-clipped")]
    [InlineData("[black-clipped]")]
    public void ACodeAsATopicIsItsEntry(string asked) =>
        Assert.Equal(
            """
            black-clipped
            =============

            Pixels are cut off at the lowest code, so read noise and bias level cannot be
            measured.

              - Cause: The offset setting is too low.
              - Cure: Raise the offset and take all frames again.

            """,
            new SensorProfileCommand().Run("help", asked).Expect(ExitCodes.Answered).Output
        );

    [Fact]
    public void ACodeThatAnOptionCuresNamesIt() =>
        Assert.EndsWith(
            "\nOn the command line: --names-say\n",
            new SensorProfileCommand().Run("help", "kind-missing").Expect(ExitCodes.Answered).Output,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("frame", "The handbook has no 'frame'. Did you mean 'frames'?")]
    [InlineData("black-cliped", "The handbook has no 'black-cliped'. Did you mean 'black-clipped'?")]
    [InlineData("everything", "The handbook has no 'everything'. The topics are frames, input,")]
    public void AWordThatIsNoTopicIsRefused(string asked, string message) =>
        Assert.StartsWith(
            "sensorprofile: " + message,
            new SensorProfileCommand().Run("help", asked).Expect(ExitCodes.WrongCommandLine).Error,
            StringComparison.Ordinal
        );

    [Fact]
    public void ThePagesAreThereAndAskForNothingFromElsewhere()
    {
        using TemporaryFolder folder = new();
        CommandRun run = folder.Command.Run("help", "--pages", "book").Expect(ExitCodes.Answered);
        Assert.Equal($"The handbook: {Path.Combine("book", "index.html")}\n", run.Output);
        string[] files = [.. Directory.EnumerateFiles(folder["book"]).Select(file => Path.GetFileName(file)).Order()];
        Assert.Equal(HandbookTopics.All.Select(topic => topic.Name + ".html").Append("index.html").Order(), files);
        Assert.All(files, file => Assert.Empty(Outside(File.ReadAllText(folder["book/" + file]))));
        folder.Command.Run("help", "--pages", "book").Expect(ExitCodes.UnwritableOutput);
        folder.Command.Run("help", "--pages", "book", "--overwrite").Expect(ExitCodes.Answered);
        folder.Command.Run("help", "frames", "--pages", "other").Expect(ExitCodes.WrongCommandLine);
    }

    [Fact]
    public void EveryLinkOfThePagesLeadsSomewhere()
    {
        Dictionary<string, string> pages = HandbookTopics
            .All.Prepend(HandbookTopics.Contents)
            .ToDictionary(
                topic => topic == HandbookTopics.Contents ? "index.html" : topic.Name + ".html",
                HandbookPages.Page
            );
        foreach ((string name, string page) in pages)
        foreach (string address in Link().Matches(page).Select(match => match.Groups["to"].Value))
        {
            string[] parts = address.Split('#');
            string file = parts[0].Length == 0 ? name : parts[0];
            Assert.True(pages.TryGetValue(file, out string? other), $"{name}: {address}");
            Assert.True(
                parts.Length == 1 || other.Contains($"id=\"{parts[1]}\"", StringComparison.Ordinal),
                $"{name}: nothing is called {address}"
            );
        }
    }

    private static IEnumerable<string> Outside(string page) => Loaded().Matches(page).Select(match => match.Value);

    [GeneratedRegex("""<(script|link|img|iframe|object)\b|@import|url\(|src=|https?:""")]
    private static partial Regex Loaded();

    [GeneratedRegex("""href="(?<to>[^"]*)["]""")]
    private static partial Regex Link();
}
