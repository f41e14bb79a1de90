using SensorProfile.Decisions.ComputedDarks;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks predict</c>.</summary>
internal static class DarkPredictionDocument
{
    public static AnswerShape Shape { get; } =
        AnswerShape.Of<PredictionVerdict>("darks predict", typeof(PredictionFields));

    public static AnswerDocument Compose(DarkPredictionAnswer answer, string file)
    {
        bool written = answer.Master is not null;
        AnswerDocument reply = DecisionDocument.Compose(
            "darks predict",
            answer,
            PredictionWords.Phrase(answer),
            new PredictionFields(
                written ? file : null,
                answer.Proof,
                [.. answer.Refused.Select(r => new RefusedMember(ClassNames.Of(r.Class), r.Pixels, r.Class.Refused))],
                answer.Trials
            )
        );
        return reply with
        {
            RulesOfThumb = [PredictionWords.Scaling(answer.Trials)],
            Tables = [Classes(answer.Test), Procedures(answer.Trials)],
            Lines = written ? [$"Computed dark: {file} (its uncertainty is the extension UNCERTAINTY)"] : [],
        };
    }

    internal static AnswerTable Classes(PredictionTest test) =>
        new(
            "What the left-out darks confirm, class by class",
            ["class", ">pixels", ">within 95 %", ">without widening", "claimed"],
            [
                .. test.Classes.Select(c =>
                    (IReadOnlyList<string>)
                        [
                            ClassNames.Of(c),
                            Plain.Whole(c.Compared),
                            Plain.Percent(c.Coverage),
                            Plain.Percent(c.PlainCoverage),
                            PredictionWords.Claim(c),
                        ]
                ),
            ]
        );

    private static AnswerTable Procedures(DarkPredictionProfile trials)
    {
        (string Name, PredictionTest? Test)[] all =
        [
            ("computed, another exposure", trials.ByExposure),
            ("computed, another temperature", trials.ByTemperature),
            ("computed, beyond the coldest and warmest", trials.Beyond),
            ("scaled by exposure", trials.ScalingByExposure),
            ("scaled by temperature", trials.ScalingByTemperature),
            ("interpolated between two temperatures", trials.Interpolation),
        ];
        return new(
            "Tested on darks that were left out",
            ["way", "works", ">ordinary", ">hot", ">glow"],
            [
                .. all.Where(a => a.Test is not null)
                    .Select(a =>
                        (IReadOnlyList<string>)
                            [
                                a.Name,
                                a.Test!.Passed ? "yes" : "no",
                                Cell(a.Test.Typical),
                                Cell(a.Test.Hot),
                                Cell(a.Test.Glow),
                            ]
                    ),
            ]
        );
    }

    private static string Cell(PredictionFigures? figures) =>
        figures is null
            ? "–"
            : $"off by {QuantityText.Number(figures.Residual.Value, 2)} e⁻ ({QuantityText.Number(figures.Expected, 2)} expected)";
}

/// <summary>Fields that only <c>darks predict</c> adds to the JSON document.</summary>
internal sealed record PredictionFields(
    string? File,
    PredictionProof Proof,
    IReadOnlyList<RefusedMember> Refused,
    DarkPredictionProfile Trials
);

/// <summary>Pixels that were not computed.</summary>
internal sealed record RefusedMember(string Class, long Pixels, ClassRefusal? Reason);
