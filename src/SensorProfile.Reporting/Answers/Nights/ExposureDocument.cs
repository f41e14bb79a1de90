using SensorProfile.Decisions.Exposure;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Reporting.Answers.Nights;

/// <summary>The answer of <c>exposure</c>.</summary>
internal static class ExposureDocument
{
    public static AnswerShape Shape { get; } = AnswerShape.Of<ExposureVerdict>("exposure", typeof(ExposureFields));

    /// <summary>The answer that terminal, JSON and page all show.</summary>
    public static AnswerDocument Compose(GainChoiceAnswer answer) =>
        Compose(answer, [AnswerAssumption.Sky(answer.Sky)]);

    /// <inheritdoc cref="Compose(GainChoiceAnswer)"/>
    public static AnswerDocument Compose(GainChoiceAnswer answer, IReadOnlyList<AnswerAssumption> assumptions)
    {
        GainChoiceAnswer[] all = [answer, .. answer.OtherSkies];
        AnswerWords words = ExposureWords.Phrase(answer);
        AnswerDocument reply = DecisionDocument.Compose(
            "exposure",
            answer,
            all.Length > 1 ? words with { Sentence = ExposureWords.SideBySide(all) } : words,
            new ExposureFields(answer.Advised, answer.Sky, [.. all.Select(Member)], answer.Modes)
        );
        return reply with
        {
            Assumptions = assumptions,
            Hints = assumptions.Any(a => a is { Name: "sky", Source: AssumptionSource.Default })
                ? [AnswerHint.GiveSky]
                : [],
            QuantitiesTitle = all.Length > 1 ? $"For the {answer.Sky.Name}" : "",
            Quantities =
            [
                .. reply.Quantities.Where(q => q.Name != QuantityNames.ExposureNeeded || answer.Modes.Count > 1),
            ],
            Tables = [.. all.Select(Modes), SkyFields.Assumptions(all.Select(a => a.Sky))],
        };
    }

    private static ExposureMember Member(GainChoiceAnswer answer)
    {
        AnswerWords words = ExposureWords.Phrase(answer);
        return new(
            answer.Sky.Name,
            answer.Sky.Rate,
            answer.Sky.Assumptions,
            words.Sentence,
            words.Word,
            answer.Quantities,
            answer.Advised,
            answer.Modes
        );
    }

    private static AnswerTable Modes(GainChoiceAnswer answer) =>
        new(
            $"Setting by setting, under {answer.Sky.Name} of {SkyFields.Rate(answer.Sky)}",
            [
                "setting",
                ">read noise",
                ">full well",
                ">range",
                ">shortest",
                $">{QuantityText.Number(100 * answer.Fill)} % full after",
                $">read noise adds at {QuantityText.Number(answer.ExposureSeconds)} s",
                "",
            ],
            [
                .. answer.Modes.Select(row =>
                    (IReadOnlyList<string>)
                        [
                            ModeLabel.Text(row.Settings),
                            QuantityText.Of(row.ReadNoise),
                            QuantityText.Of(row.FullWell),
                            QuantityText.Of(row.DynamicRange),
                            ReadableTime.Text(row.ExposureNeeded),
                            ReadableTime.Text(row.LongestExposure),
                            QuantityText.Number(100 * row.ReadNoiseShare, 2) + " %",
                            answer.Modes.Count > 1 && row.Settings == answer.Advised ? "advised" : "",
                        ]
                ),
            ]
        );
}

/// <summary>Fields that only <c>exposure</c> adds to the JSON document.</summary>
internal sealed record ExposureFields(
    ModeSettings Advised,
    SkyRate Sky,
    IReadOnlyList<ExposureMember> Skies,
    IReadOnlyList<GainRow> Modes
);

/// <summary>The answer for one of several skies.</summary>
internal sealed record ExposureMember(
    string Name,
    Measurement Rate,
    IReadOnlyList<string> Assumptions,
    string Sentence,
    string Verdict,
    IReadOnlyDictionary<string, Measurement?> Quantities,
    ModeSettings Advised,
    IReadOnlyList<GainRow> Modes
);
