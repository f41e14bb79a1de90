using SensorProfile.Drift.OverTheYears;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Years;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Years;

/// <summary>The first page of a drift report: one sentence, what to retake, the few numbers behind it.</summary>
internal static class DriftVerdictSection
{
    /// <summary>The page.</summary>
    public static ReportSection Compose(DriftAnswer answer)
    {
        AnswerDocument words = DriftDocument.Compose(answer);
        string advice = RetakeWords.Phrase(answer);
        List<Block> blocks =
        [
            new AnswerBlock(Verdict(answer.Outcome), words.Sentence, advice.Length > 0 ? advice : words.Reason),
        ];
        KeyFigure[] figures = [.. Figures(answer)];
        if (figures.Length > 0)
            blocks.Add(new KeyFiguresBlock(figures));
        if (answer.Library.Count > 0)
        {
            blocks.Add(new SubheadingBlock("How long darks taken now will last"));
            blocks.AddRange(answer.Library.Select(l => new TextBlock(LibraryWords.Phrase(l))));
        }
        // findings already in the reason are not repeated
        Finding[] findings =
        [
            .. words
                .Findings.Where(f => !words.Reason.Contains(f.Message, StringComparison.Ordinal))
                .OrderByDescending(f => f.Severity),
        ];
        if (findings.Length > 0)
        {
            blocks.Add(new SubheadingBlock("Findings"));
            blocks.Add(new FindingsBlock(findings));
        }
        if (advice.Length > 0)
        {
            blocks.Add(new SubheadingBlock("How sure this is"));
            blocks.Add(new TextBlock(words.Reason));
            blocks.AddRange(words.RulesOfThumb.Select(rule => new TextBlock(rule)));
        }
        return new ReportSection(null, null, blocks);
    }

    private static Verdict Verdict(DriftVerdict verdict) =>
        verdict switch
        {
            DriftVerdict.Changed => Blocks.Verdict.Changed,
            DriftVerdict.Unchanged => Blocks.Verdict.Unchanged,
            _ => Blocks.Verdict.CannotTell,
        };

    private static IEnumerable<KeyFigure> Figures(DriftAnswer answer)
    {
        if (DriftPaceSection.DarkPerYear(answer) is { } dark)
            yield return Figure("Dark current, change per year", dark);
        if (answer.HotPixels is not { } hot)
            yield break;
        yield return new KeyFigure(
            "New hot pixels",
            QuantityText.Count(hot.New),
            $"{QuantityText.Count(hot.Kept)} stayed, {QuantityText.Count(hot.Healed)} healed"
        );
        if (hot.NewPerYear is { } born)
            yield return new KeyFigure(
                "New per year",
                QuantityText.Number(born.Value, born.StandardUncertainty),
                "per million pixels"
            );
        if (hot.HealedPerYear is { } healed)
            yield return new KeyFigure(
                "Healed per year",
                QuantityText.Number(healed.Value, healed.StandardUncertainty),
                "per million pixels"
            );
        if (answer.Probes.FirstOrDefault(p => p.Mode == hot.Mode) is { StepOfHotPixels: { } probe })
            yield return Figure("Sensor against its probe", probe);
        yield return new KeyFigure(
            "Patches that grow",
            QuantityText.Count(hot.Patches.Count),
            hot.Patches.Count > 0 ? hot.Patches[0].Where : "none"
        );
    }

    private static KeyFigure Figure(string label, Measurement m) =>
        new(label, QuantityText.Number(m.Value, m.StandardUncertainty), QuantityText.Unit(m.Unit));
}
