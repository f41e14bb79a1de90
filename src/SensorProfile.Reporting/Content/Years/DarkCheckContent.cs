using SensorProfile.Drift.MasterDarks;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Years;

/// <summary>
/// Puts together the report of a check of master darks: the verdict, one line per master, the residuals of each by
/// kind, what to shoot.
/// </summary>
internal static class DarkCheckContent
{
    /// <summary>The report.</summary>
    /// <param name="answer">The check.</param> <param name="created">Date that the documents carry.</param>
    public static ReportDocument Build(DarkLibraryAnswer answer, DateTimeOffset created)
    {
        AnswerDocument words = DarkLibraryDocument.Compose(answer);
        List<Block> first = [new AnswerBlock(VerdictOf(answer.Library), words.Sentence, words.Reason)];
        if (answer.Shoot.Count > 0)
            first.AddRange([
                new SubheadingBlock("Shoot at least"),
                new ListBlock([.. answer.Shoot.Select(s => DarkLibraryWords.Shoot(answer, s))]),
            ]);
        first.AddRange([new SubheadingBlock("Each master"), Masters(answer)]);
        if (words.Findings.Count > 0)
            first.AddRange([
                new SubheadingBlock("Findings"),
                new FindingsBlock([.. words.Findings.OrderByDescending(f => f.Severity)]),
            ]);
        first.AddRange(words.RulesOfThumb.Select(rule => new TextBlock(rule)));
        List<ReportSection> sections = [new ReportSection(null, null, first)];
        if (answer.Masters.Any(m => m.Parts.Count > 0))
            sections.Add(
                new ReportSection(
                    "What is left after subtraction, by kind",
                    null,
                    [
                        new TextBlock(
                            "Each master, brought to the level of the fresh darks, is subtracted from their mean; the "
                                + "noise of the fresh darks is removed. Ordinary pixels, glow and lines are judged against "
                                + "the noise of the stack, hot pixels by the share of all pixels that would show in it."
                        ),
                        .. answer.Masters.Where(m => m.Parts.Count > 0).SelectMany(Parts),
                    ]
                )
            );
        return new ReportDocument(
            "Master darks",
            $"checked against fresh darks · {QuantityText.Count(answer.Masters.Count)} "
                + $"master{(answer.Masters.Count == 1 ? "" : "s")}",
            created,
            sections
        )
        {
            Kind = "dark library check",
            Subject = "Whether master darks still hold",
        };
    }

    private static TableBlock Masters(DarkLibraryAnswer answer) =>
        new(
            ["Master", "Verdict", "Loss", "Why"],
            [
                .. answer.Masters.Select(m =>
                    (IReadOnlyList<string>)
                        [
                            Path.GetFileName(m.File),
                            EnumWord.Spaced(m.Verdict),
                            m.Loss is { } loss ? $"{QuantityText.Number(loss.Value, 2)} %" : "–",
                            MasterWords.Reason(answer, m) + (m.Scale.Length > 0 ? $" Read as {m.Scale}." : ""),
                        ]
                ),
            ],
            [0.22, 0.1, 0.09, 0.59]
        );

    private static IEnumerable<Block> Parts(MasterVerdict master)
    {
        yield return new SubheadingBlock(Path.GetFileName(master.File));
        yield return new TableBlock(
            ["Kind", "Left", "Accepted", "Verdict"],
            [
                .. master.Parts.Select(p =>
                    (IReadOnlyList<string>)
                        [
                            Name(p.Kind),
                            Value(p.Value),
                            IsShare(p) ? $"{QuantityText.Number(100 * p.Limit, 2)} %" : QuantityText.Number(p.Limit, 3),
                            EnumWord.Spaced(p.Verdict),
                        ]
                ),
            ],
            [0.34, 0.26, 0.2, 0.2]
        );
    }

    private static bool IsShare(ResidualPart part) => part.Value.Unit == "1";

    private static string Value(Measurement m) =>
        m.Unit == "1"
            ? $"{QuantityText.Number(100 * m.Value, 100 * m.StandardUncertainty)} % of the pixels"
            : QuantityText.Of(m);

    private static string Name(ResidualKind kind) =>
        kind switch
        {
            ResidualKind.Typical => "ordinary pixels, spread",
            ResidualKind.Hot => "hot pixels in the master",
            ResidualKind.NewHot => "hot pixels not in the master",
            ResidualKind.Glow => "glow, largest",
            _ => "rows or columns, spread",
        };

    private static Verdict VerdictOf(CheckVerdict verdict) =>
        verdict switch
        {
            CheckVerdict.Keep => Verdict.Keep,
            CheckVerdict.Retake => Verdict.Retake,
            _ => Verdict.CannotTell,
        };
}
