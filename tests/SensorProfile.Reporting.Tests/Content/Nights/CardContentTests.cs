using SensorProfile.Profiles;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;
using SensorProfile.Reporting.Html;
using SensorProfile.Reporting.Pdf;

namespace SensorProfile.Reporting.Tests.Content.Nights;

public sealed class CardContentTests : IDisposable
{
    private readonly string file = Path.GetTempFileName();

    private static readonly CameraProfile profile = TarnProfile.Build();
    private static readonly NightAnswers nights = NightAnswers.Ask(profile, profile.Modes[0]);

    public void Dispose() => File.Delete(file);

    [Fact] // the same sentences as page 1 of the report, each under its question
    public void TheCardSaysWhatTheReportOpensWith()
    {
        Block[] blocks = [.. Assert.Single(CardContent.Build(profile, [nights]).Sections).Blocks];
        foreach ((string question, string sentence) in InShort.Sentences(nights))
        {
            int at = Array.FindIndex(blocks, b => b is SubheadingBlock { Text: var text } && text == question);
            Assert.Equal(new TextBlock(sentence), blocks[at + 1]);
        }
        Assert.Equal(
            ["What to retake, or to watch", "When to measure again"],
            blocks.OfType<SubheadingBlock>().TakeLast(2).Select(b => b.Text)
        );
    }

    [Fact] // four warnings are read in the dark, twenty are not
    public void ManyWarningsAreCounted()
    {
        CameraProfile minded = profile with
        {
            Findings =
            [
                new Finding("light-drift", Severity.Note, "A note."),
                .. Enumerable.Range(1, 6).Select(i => new Finding("torn-frame", Severity.Warning, $"Warning {i}.")),
                new Finding("gain-not-measured", Severity.Refusal, "A refusal."),
            ],
        };
        ListBlock list = Assert.Single(CardContent.Build(minded, [nights]).Sections[0].Blocks.OfType<ListBlock>());
        Assert.Equal(["A refusal.", "Warning 1.", "Warning 2.", "Warning 3.", "3 more are in the report."], list.Items);
    }

    [Fact]
    public void EachSettingHasItsPart()
    {
        CameraProfile sweep = profile with
        {
            Modes =
            [
                profile.Modes[0] with
                {
                    Settings = profile.Modes[0].Settings with { Gain = 0 },
                },
                profile.Modes[0] with
                {
                    Settings = profile.Modes[0].Settings with { Gain = 120 },
                },
            ],
        };
        ReportDocument card = CardContent.Build(sweep, [nights, nights]);
        Assert.Equal(3, card.Sections.Count);
        Assert.All(card.Sections, section => Assert.NotNull(section.Title));
    }

    [Fact] // two pages that can be turned with a thumb
    public void ThePdfIsSmallAndShort()
    {
        ReportDocument card = CardContent.Build(profile, [nights]);
        File.WriteAllBytes(file, PdfReport.Bytes(card, PageSize.A6));
        string info = Tool.Run("pdfinfo", file);
        Assert.Matches(@"Pages:\s+[12]\n", info);
        Assert.Matches(@"Page size:\s+297\.6\d* x 419\.5", info);
        Assert.Contains("How cold", HtmlReport.Text(card), StringComparison.Ordinal);
    }
}
