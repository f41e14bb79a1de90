using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Answers.Flats;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>What to do tonight, in the sentences of the commands; it opens the report.</summary>
internal static class InShort
{
    /// <summary>The conditions that the sentences hold for.</summary>
    public static string Conditions =>
        $"For lights of {NightAnswers.ExposureSeconds} s, {NightAnswers.Lights} to a stack, under a {NightAnswers.Sky.Name}";

    /// <summary>A heading and one sentence for each decision; nothing where no question could be answered.</summary>
    public static IEnumerable<Block> Compose(NightAnswers answers)
    {
        string[] sentences = [.. Sentences(answers).Select(s => $"{s.Question}: {s.Sentence}")];
        if (sentences.Length == 0)
            yield break;
        yield return new SubheadingBlock(Conditions);
        yield return new ListBlock(sentences);
    }

    /// <summary>Each question that could be answered, with the sentence of its command.</summary>
    public static IEnumerable<(string Question, string Sentence)> Sentences(NightAnswers answers)
    {
        if (answers.Setpoints is [{ } setpoint, ..])
            yield return ("How cold", SetpointWords.Phrase(setpoint).Sentence);
        if (answers.Exposures is [{ } exposure, ..])
            yield return ("How long to expose", ExposureWords.Phrase(exposure).Sentence);
        if (answers.DitheredCounts is [{ } count, ..])
            yield return (
                $"How many darks, with {NightAnswers.Positions} dither positions",
                DarkCountWords.Phrase(count).Sentence
            );
        if (answers.DitheredFlats is [{ } flats, ..])
            yield return (
                $"How many flats, with {NightAnswers.Positions} dither positions",
                FlatPlanWords.Phrase(flats).Sentence
            );
        if (answers.Dithered is [{ } dithered, ..])
            yield return (
                $"How close darks must be, with {NightAnswers.Positions} dither positions and outliers rejected",
                ToleranceWords.Phrase(dithered).Sentence
            );
        if (answers.Still is [{ } still, ..])
            yield return ("How close darks must be, without dithering", ToleranceWords.Phrase(still).Sentence);
    }
}
