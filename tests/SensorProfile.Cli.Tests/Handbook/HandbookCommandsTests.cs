using System.Text.RegularExpressions;
using SensorProfile.Cli.Tests.Readme;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Handbook;

/// <summary>
/// Every command block of the handbook runs on the demo's output, and answers what is shown in a terminal of 80 columns.
/// </summary>
[Collection(DemoNight.Shared)]
public sealed partial class HandbookCommandsTests(DemoNight night)
{
    private const string Demo = "sensorprofile-demo";

    public static TheoryData<string> PagesWithCommands =>
        [.. HandbookFiles.All.Where(file => ShownCommand.In(File.ReadAllText(Checkout.File(file))).Count > 0)];

    [Theory, MemberData(nameof(PagesWithCommands))]
    public void EveryCommandGivesTheAnswerShown(string file)
    {
        using TemporaryFolder folder = new();
        // what the pages write lies beside it; its frames are only read
        Directory.CreateSymbolicLink(folder[Demo], night.Folder[Demo]);
        SensorProfileCommand command = folder.Command with
        {
            // help indents blocks by four
            Environment = new Dictionary<string, string?> { ["COLUMNS"] = "76" },
        };
        new ShownAnswers(command, file).Check();
    }

    [Fact]
    public void TheReportHasTheSectionsThatTheHandbookExplains()
    {
        string report = File.ReadAllText(night.Folder[Demo + "/report.html"]),
            page = File.ReadAllText(Checkout.File("reports/handbook/reading.md"));
        string[] sections = [.. SectionTitle().Matches(page).Select(m => m.Groups["title"].Value).Skip(1)];
        Assert.True(sections.Length > 10);
        Assert.All(sections, title => Assert.Matches($"<h[23]>{Regex.Escape(title)}", report));
    }

    [Fact]
    public void TheCardHasTheLinesThatTheHandbookExplains()
    {
        string card = File.ReadAllText(night.Folder[Demo + "/card.html"]),
            page = File.ReadAllText(Checkout.File("reports/handbook/card.md"));
        string[] lines = [.. CardLine().Matches(page).Select(m => m.Groups["title"].Value)];
        Assert.Equal(7, lines.Length);
        Assert.All(lines, title => Assert.Contains($"<h3>{title}", card, StringComparison.Ordinal));
    }

    [GeneratedRegex("^## (?<title>.+)$", RegexOptions.Multiline)]
    private static partial Regex SectionTitle();

    [GeneratedRegex(@"\*\*(?<title>[^*]+)\*\*")]
    private static partial Regex CardLine();

    [Fact]
    public void TheRecipesShowCommandsThatRun() =>
        Assert.True(ShownCommand.In(File.ReadAllText(Checkout.File("reports/handbook/recipes.md"))).Count > 10);
}
