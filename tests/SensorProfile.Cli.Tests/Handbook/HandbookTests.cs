using System.Text.Json;
using System.Text.RegularExpressions;
using SensorProfile.Cli.Defaults;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Reporting.Handbook;

namespace SensorProfile.Cli.Tests.Handbook;

/// <summary>What the handbook says of the program is so, and all of it is there.</summary>
public sealed partial class HandbookTests
{
    public static TheoryData<string> EveryTopic => [.. HandbookTopics.All.Select(topic => topic.Name)];

    [Fact]
    public void EveryFileIsATopicOfTheContentsOrATable()
    {
        string[] topics = ["README", .. HandbookTopics.All.Select(topic => topic.Name)];
        Assert.Equal(
            HandbookFiles
                .All.Select(file => Path.GetFileNameWithoutExtension(file))
                .Where(name => name != "coverage")
                .Order(),
            topics.Order()
        );
        Assert.Equal(HandbookFiles.All.Select(file => Path.GetFileName(file)).Order(), HandbookTopics.Files.Order());
    }

    /// <summary>"help report" is the help of that command, so no topic may have its name.</summary>
    [Fact]
    public void NoTopicHasTheNameOfACommandOrACode() =>
        Assert.DoesNotContain(HandbookTopics.All, topic =>
            CommandList.Names.Any(name => name.Split(' ')[0] == topic.Name) || HandbookTopics.Codes.Contains(topic.Name)
        );

    [Fact]
    public void EveryCodeOfTheCatalogueHasItsMeaningCauseAndCure()
    {
        string page = HandbookTopics.Find("findings")!.Markdown;
        using JsonDocument catalogue = JsonDocument.Parse(
            File.ReadAllText(Checkout.File("src/SensorProfile/findings.json"))
        );
        JsonProperty[] codes = [.. catalogue.RootElement.EnumerateObject()];
        Assert.True(codes.Length > 100, "the catalogue holds hardly a code");
        foreach (JsonProperty code in codes)
            Assert.Contains(
                $"### {code.Name}\n\n{code.Value.GetProperty("meaning")}\n\n- Cause: "
                    + $"{code.Value.GetProperty("cause")}\n- Cure: {code.Value.GetProperty("cure")}",
                page,
                StringComparison.Ordinal
            );
    }

    [Fact]
    public void TheTableOfCoverageOrAWordForItStandsInItsPage()
    {
        string page = HandbookTopics.Find("uncertainty")!.Markdown;
        Assert.DoesNotContain("(coverage.md)", page, StringComparison.Ordinal);
        string table = Checkout.File("reports/handbook/coverage.md");
        Assert.Contains(
            File.Exists(table) ? File.ReadAllText(table).ReplaceLineEndings("\n") : "not part of this version",
            page,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void EveryCommandHasARecipeOrAPage()
    {
        string handbook = string.Concat(HandbookTopics.All.Select(topic => topic.Markdown));
        Assert.All(CommandList.Names, name =>
            Assert.Contains($"sensorprofile {name}", handbook, StringComparison.Ordinal)
        );
    }

    [Theory, MemberData(nameof(EveryTopic))]
    public void EveryOptionThatIsNamedIsKnownToACommand(string name)
    {
        SettingsOptions[] known = [.. CommandList.Names.Select(n => new SettingsOptions(CommandList.SettingsOf(n)!))];
        Assert.All(Option().Matches(HandbookTopics.Find(name)!.Markdown).Select(match => match.Value), option =>
            Assert.True(known.Any(k => k.Has(option)), $"{name}: no command knows {option}")
        );
    }

    [Theory, MemberData(nameof(EveryTopic))]
    public void EveryCommandThatIsNamedExists(string name) =>
        Assert.All(NamedCommand().Matches(HandbookTopics.Find(name)!.Markdown), match =>
            Assert.True(
                CommandList.NameIn(match.Groups["words"].Value.Split(' ')).Length > 0,
                $"{name}: no command '{match.Value}'"
            )
        );

    [Theory, MemberData(nameof(EveryTopic))]
    public void ATerminalOf80ColumnsShowsEveryLine(string name) =>
        Assert.All(new SensorProfileCommand().Run("help", name).Expect(ExitCodes.Answered).Output.Split('\n'), line =>
            Assert.InRange(line.Length, 0, 80)
        );

    [GeneratedRegex(@"(?<![\w-])--[a-z][a-z-]+")]
    private static partial Regex Option();

    [GeneratedRegex(@"sensorprofile (?<words>[a-z]+( [a-z]+)?)")]
    private static partial Regex NamedCommand();
}
