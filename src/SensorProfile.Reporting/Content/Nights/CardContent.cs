using System.Globalization;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>
/// What to do with the camera, short enough for a phone beside the telescope: how cold, how long, how many darks and how
/// close, what to retake, when to measure again.
/// </summary>
internal static class CardContent
{
    private const int MostFindings = 4;

    /// <summary>The card of a profile; each of its modes has a part.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="nights">What each mode means for usual nights, in the order of the modes.</param>
    public static ReportDocument Build(CameraProfile profile, IReadOnlyList<NightAnswers> nights)
    {
        List<ReportSection> sections =
        [
            .. profile.Modes.Select(
                (mode, i) => new ReportSection(ModeLabel.Text(mode.Settings), null, [.. Decisions(mode, nights[i])])
            ),
            new ReportSection("For all settings", null, [.. Upkeep(profile)]),
        ];
        if (profile.Modes.Count <= 1) // a single part needs no heading
            sections = [new ReportSection(null, null, [.. sections.SelectMany(s => s.Blocks)])];
        string date = profile.CreatedUtc.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return new ReportDocument(profile.Camera.Name, $"Measured {date}", profile.CreatedUtc, sections)
        {
            Kind = "card",
            Subject = "What to do with this camera",
        };
    }

    private static IEnumerable<Block> Decisions(ModeProfile mode, NightAnswers nights)
    {
        (string Question, string Sentence)[] sentences = [.. InShort.Sentences(nights)];
        yield return new TextBlock(
            sentences.Length > 0
                ? InShort.Conditions + "."
                : "No question could be answered. " + Headline.Sentence(mode)
        );
        foreach ((string question, string sentence) in sentences)
        {
            yield return new SubheadingBlock(question);
            yield return new TextBlock(sentence);
        }
    }

    private static IEnumerable<Block> Upkeep(CameraProfile profile)
    {
        string[] minded =
        [
            .. profile
                .Findings.Where(f => f.Severity != Severity.Note)
                .OrderByDescending(f => f.Severity)
                .Select(f => f.Message)
                .Distinct(),
        ];
        yield return new SubheadingBlock("What to retake, or to watch");
        if (minded.Length == 0)
            yield return new TextBlock("Nothing: no finding speaks against these frames.");
        else
            yield return new ListBlock([
                .. minded.Take(MostFindings),
                .. minded.Length > MostFindings
                    ? (string[])[$"{QuantityText.Count(minded.Length - MostFindings)} more are in the report."]
                    : [],
            ]);
        yield return new SubheadingBlock("When to measure again");
        yield return new TextBlock(
            "In a year (common practice, no source), or as soon as new darks no longer fit: measure again and compare both "
                + "profiles."
        );
    }
}
