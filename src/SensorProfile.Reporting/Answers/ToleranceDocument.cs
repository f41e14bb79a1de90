using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Reporting.Answers;

/// <summary>The answer of <c>darks match</c> for a camera: how far off the darks may be.</summary>
internal static class ToleranceDocument
{
    private const string NoLimit = "no limit";

    public static AnswerDocument Of(ToleranceAnswer answer)
    {
        ToleranceAnswer[] all = [answer, .. answer.OtherSkies];
        AnswerDocument reply = DecisionDocument.Of(
            "darks match",
            answer,
            JsonNodes.Field("bindingCause", answer.BindingCause),
            JsonNodes.Field("sky", answer.Sky),
            JsonNodes.Field("skies", all.Select(a => SkyFields.Member(a.Sky, a))),
            JsonNodes.Field("causes", answer.Causes),
            JsonNodes.Field("curve", answer.Curve)
        );
        return reply with
        {
            QuantitiesTitle = all.Length > 1 ? $"For the {answer.Sky.Name}" : "",
            Tables =
            [
                .. all.Length > 1
                    ?
                    [
                        SkyFields.SideBySide(
                            [.. all.Select(a => (a.Sky, (Answer)a))],
                            [
                                ("toleranceWarmer", "warmer by"),
                                ("toleranceColder", "colder by"),
                                ("toleranceExposure", "exposure by"),
                            ],
                            NoLimit
                        ),
                    ]
                    : Array.Empty<AnswerTable>(),
                Causes(answer),
                SkyFields.Assumptions(all.Select(a => a.Sky)),
            ],
        };
    }

    private static AnswerTable Causes(ToleranceAnswer answer) =>
        new(
            $"What each cause alone allows ({answer.Sky.Name})",
            ["cause", ">warmer by", ">colder by", ">exposure by", "limit"],
            [
                .. answer.Causes.Select(c =>
                    (IReadOnlyList<string>)
                        [
                            EnumWord.Spaced(c.Cause),
                            Cell(c, c.Warmer),
                            Cell(c, c.Colder),
                            Cell(c, c.Exposure),
                            c.Threshold,
                        ]
                ),
            ]
        );

    private static string Cell(CauseTolerance cause, Measurement? value) =>
        !cause.Known ? "not known"
        : value is null ? NoLimit
        : QuantityText.Of(value);
}
