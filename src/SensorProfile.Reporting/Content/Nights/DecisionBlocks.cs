using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>The pieces that every page of an answer shares.</summary>
internal static class DecisionBlocks
{
    /// <summary>The sentence to act on, and why.</summary>
    public static AnswerBlock Head(AnswerDocument answer) =>
        new(answer.CannotTell ? Verdict.CannotTell : Verdict.Answered, answer.Sentence, answer.Reason);

    /// <summary>The numbers with their 95 % intervals.</summary>
    public static IEnumerable<Block> Numbers(Answer answer, string absent)
    {
        if (answer.Quantities.Count == 0)
            yield break;
        yield return new TableBlock(
            ["Quantity", "Value", "95 %"],
            [
                .. answer.Quantities.Select(q =>
                    (IReadOnlyList<string>)
                        [
                            DecisionLabels.Of(q.Key) ?? q.Key,
                            q.Value is { } value
                                ? q.Key == QuantityNames.TotalTime
                                    ? DecisionText.Duration(value.Value)
                                    : AddedNoise.Is(q.Key)
                                        ? AddedNoise.Of(value.Value)
                                        : Text(value)
                                : absent,
                            Interval(answer.Intervals.GetValueOrDefault(q.Key)),
                        ]
                ),
            ],
            [0.48, 0.27, 0.25]
        )
        {
            FirstNumberColumn = 1,
        };
    }

    /// <summary>Findings, rules of thumb and cautions, as far as there are any.</summary>
    public static IEnumerable<Block> Tail(AnswerDocument answer)
    {
        Finding[] findings =
        [
            .. answer.Findings.DistinctBy(finding => finding.Message).OrderByDescending(finding => finding.Severity),
        ];
        string[] rules = [.. answer.RulesOfThumb.Distinct()],
            cautions = [.. answer.Cautions.Distinct()];
        if (findings.Length > 0)
        {
            yield return new SubheadingBlock("Findings");
            yield return new FindingsBlock(findings);
        }
        if (rules.Length > 0)
        {
            yield return new SubheadingBlock("For comparison");
            yield return new ListBlock(rules);
        }
        if (cautions.Length > 0)
        {
            yield return new SubheadingBlock("Take care");
            yield return new ListBlock(cautions);
        }
    }

    /// <summary>What was assumed about the skies.</summary>
    public static IEnumerable<Block> Skies(IEnumerable<SkyRate> skies)
    {
        string[] lines =
        [
            .. skies
                .Where(sky => sky.Assumptions.Count > 0)
                .Select(sky => $"{sky.Name}, {DecisionText.Rate(sky)}: {string.Join("; ", sky.Assumptions)}"),
        ];
        if (lines.Length > 0)
        {
            yield return new SubheadingBlock("The sky");
            yield return new ListBlock(lines);
        }
    }

    private static string Text(Measurement value) =>
        value.StandardUncertainty > 0
            ? QuantityText.Of(value)
            : $"{QuantityText.Number(value.Value, 4)} {QuantityText.Unit(value.Unit)}";

    private static string Interval(Interval? ends) => ends is null ? "" : $"{End(ends.Low)} … {End(ends.High)}";

    private static string End(double? value) => value is { } end ? QuantityText.Number(end, 3) : "open";
}
