using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;

namespace SensorProfile.Reporting.Answers.Nights;

/// <summary>The answer of <c>setpoint</c>.</summary>
internal static class SetpointDocument
{
    private const double CurveStepShown = 5;
    private const int MaxNightsShown = 24; // a year is summarised; --json lists every night

    public static AnswerShape Shape { get; } = AnswerShape.Of<SetpointVerdict>("setpoint", typeof(SetpointFields));

    /// <summary>The answer that terminal, JSON and page all show.</summary>
    public static AnswerDocument Compose(SetpointAnswer answer) => Compose(answer, [AnswerAssumption.Sky(answer.Sky)]);

    /// <inheritdoc cref="Compose(SetpointAnswer)"/>
    public static AnswerDocument Compose(SetpointAnswer answer, IReadOnlyList<AnswerAssumption> assumptions)
    {
        SetpointAnswer[] all = [answer, .. answer.OtherSkies];
        AnswerWords words = SetpointWords.Phrase(answer);
        AnswerDocument reply = DecisionDocument.Compose(
            "setpoint",
            answer,
            all.Length > 1 ? words with { Sentence = SetpointWords.SideBySide(all) } : words,
            new SetpointFields(
                answer.Limit,
                answer.Bound,
                answer.At,
                answer.Sky,
                [.. all.Select(a => SkyFields.Member(a.Sky, a, SetpointWords.Phrase(a)))],
                answer.Noise,
                answer.Curve,
                answer.Ambient,
                answer.Nights
            )
        );
        return reply with
        {
            Assumptions = assumptions,
            Figure = () => SetpointBlocks.Figure(all, new FigureCounter(), "setpoint.csv"),
            Hints = [.. Hints(answer, assumptions)],
            Findings = [.. reply.Findings, .. SetpointFindings.Judge(answer)],
            QuantitiesTitle = all.Length > 1 ? $"For the {answer.Sky.Name}" : "",
            Quantities = [.. reply.Quantities.Select(q => Worded(q, answer))],
            Tables =
            [
                .. all.Length > 1
                    ?
                    [
                        SkyFields.SideBySide(
                            [.. all.Select(a => (a.Sky, (Answer)a))],
                            [
                                (QuantityNames.Setpoint, answer.Uncooled ? "up to" : "run at"),
                                (QuantityNames.SetpointTypical, "typical pixel"),
                                (QuantityNames.Setpoint99, "99 % of pixels"),
                            ],
                            "beyond the profile"
                        ),
                    ]
                    : Array.Empty<AnswerTable>(),
                Noise(answer),
                Nights(answer),
                Ambient(answer),
                Curve(answer),
                SkyFields.Assumptions(all.Select(a => a.Sky)),
            ],
        };
    }

    private static IEnumerable<AnswerHint> Hints(SetpointAnswer answer, IEnumerable<AnswerAssumption> assumptions)
    {
        if (assumptions.Any(a => a is { Name: "sky", Source: AssumptionSource.Default }))
            yield return AnswerHint.GiveSky;
        if (answer is { Uncooled: false, WarmestAir: null })
            yield return AnswerHint.GiveAmbient;
        if (answer is { Uncooled: false, ColdestHeld: null })
            yield return AnswerHint.GiveCoolerReach;
        if (answer is { Uncooled: true, SelfHeating: 0 })
            yield return AnswerHint.GiveSelfHeating;
    }

    /// <summary>Labels for a camera without a cooler, which cannot be run at a chosen temperature.</summary>
    private static AnswerQuantity Worded(AnswerQuantity quantity, SetpointAnswer answer) =>
        quantity with
        {
            Label =
                quantity.Name != QuantityNames.Setpoint || !answer.Uncooled ? quantity.Label
                : answer.Verdict == SetpointVerdict.Limited ? "coldest measured"
                : "warmest sensor within your loss",
            Absent = "beyond the profile",
        };

    private static AnswerTable Noise(SetpointAnswer answer) =>
        new(
            answer.Noise is { } noise ? $"{LightNoiseLines.Title(noise, answer)} ({answer.Sky.Name})" : "",
            ["", ">noise", ">share of its variance"],
            [.. answer.Noise is { } light ? LightNoiseLines.Of(light) : []]
        );

    private static AnswerTable Nights(SetpointAnswer answer) =>
        new(
            answer.Uncooled ? "How many nights are that cold" : "On how many nights the cooler holds it",
            [">sensor", ">nights", ">share", ">typical pixel", ">pixel at 99 %"],
            [
                .. answer.Nights.Select(n =>
                    (IReadOnlyList<string>)
                        [
                            QuantityText.Temperature(n.Sensor),
                            QuantityText.Count(n.Nights),
                            Percent(100 * n.Share),
                            AddedNoise.Of(n.ExtraTypical),
                            n.ExtraAtShare is { } extra ? AddedNoise.Of(extra) : "",
                        ]
                ),
            ]
        );

    private static AnswerTable Curve(SetpointAnswer answer) =>
        new(
            $"Noise that dark current adds to one light ({answer.Sky.Name})",
            [">sensor", ">typical pixel", ">95 %", ">pixel at 99 %", ""],
            [
                .. answer
                    .Curve.Where(p => p.Temperature % CurveStepShown == 0)
                    .Select(p =>
                        (IReadOnlyList<string>)
                            [
                                QuantityText.Temperature(p.Temperature),
                                AddedNoise.Of(p.ExtraTypical),
                                p is { Low: { } low, High: { } high } ? AddedNoise.Between(low, high) : "",
                                p.ExtraAtShare is { } extra ? AddedNoise.Of(extra) : "",
                                p.Extrapolated ? "outside the measured range" : "",
                            ]
                    ),
            ]
        );

    private static AnswerTable Ambient(SetpointAnswer answer) =>
        new(
            "What each ambient temperature allows",
            ["night", ">ambient", ">sensor", ">typical pixel", ">pixel at 99 %", ""],
            [
                .. (answer.Ambient.Count > MaxNightsShown ? [] : answer.Ambient).Select(a =>
                    (IReadOnlyList<string>)
                        [
                            a.Label,
                            QuantityText.Temperature(a.Ambient),
                            QuantityText.Temperature(a.Sensor),
                            AddedNoise.Of(a.ExtraTypical),
                            a.ExtraAtShare is { } extra ? AddedNoise.Of(extra) : "",
                            (a.WithinLoss ? "within your loss" : "beyond your loss")
                                + (a.Extrapolated ? ", outside the measured range" : ""),
                        ]
                ),
            ]
        );

    private static string Percent(double percent) => QuantityText.Number(percent, 2) + " %";
}

/// <summary>Fields that only <c>setpoint</c> adds to the JSON document.</summary>
internal sealed record SetpointFields(
    SetpointLimit? Limit,
    SetpointBound Bound,
    SetpointPoint At,
    SkyRate Sky,
    IReadOnlyList<SkyMember> Skies,
    LightNoise? Noise,
    IReadOnlyList<SetpointPoint> Curve,
    IReadOnlyList<AmbientCost> Ambient,
    IReadOnlyList<NightsAtTemperature> Nights
);
