using System.Text.Json.Nodes;
using SensorProfile.Decisions.ComputedDarks;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>The answer of <c>darks predict</c>.</summary>
internal static class DarkPredictionDocument
{
    public static AnswerDocument Of(DarkPredictionAnswer answer, string file)
    {
        bool written = answer.Master is not null;
        AnswerDocument reply = DecisionDocument.Of(
            "darks predict",
            answer,
            PredictionWords.Of(answer),
            KeyValuePair.Create<string, JsonNode?>("file", written ? JsonValue.Create(file) : null),
            JsonNodes.Field("proof", answer.Proof),
            JsonNodes.Field("trials", answer.Trials)
        );
        return reply with
        {
            RulesOfThumb = [PredictionWords.Scaling(answer.Trials)],
            Tables = [Procedures(answer.Trials)],
            Lines = written ? [$"Computed dark: {file} (its uncertainty is the extension UNCERTAINTY)"] : [],
        };
    }

    private static AnswerTable Procedures(DarkPredictionProfile trials)
    {
        (string Name, PredictionTest? Test)[] all =
        [
            ("computed, another exposure", trials.ByExposure),
            ("computed, another temperature", trials.ByTemperature),
            ("computed, beyond the coldest and warmest", trials.Beyond),
            ("scaled by exposure", trials.ScalingByExposure),
            ("scaled by temperature", trials.ScalingByTemperature),
            ("mixed of two temperatures", trials.Interpolation),
        ];
        return new(
            "Tried on darks that were left out",
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
