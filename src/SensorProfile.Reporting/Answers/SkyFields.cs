using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Reporting.Answers;

/// <summary>The sky of an answer, and the skies side by side when the user gave none.</summary>
internal static class SkyFields
{
    /// <summary>What was assumed about the sky.</summary>
    public static AnswerTable Assumptions(IEnumerable<SkyRate> skies) =>
        AnswerTable.List(
            "The sky",
            skies
                .Where(s => s.Assumptions.Count > 0)
                .Select(s => $"{s.Name}, {Rate(s)}: {string.Join("; ", s.Assumptions)}")
        );

    /// <summary>One row per sky: its name and rate, then the quantities asked for.</summary>
    public static AnswerTable SideBySide(
        IReadOnlyList<(SkyRate Sky, Answer Answer)> answers,
        IReadOnlyList<(string Name, string Heading)> quantities,
        string absent
    ) =>
        new(
            "",
            ["", ">sky", .. quantities.Select(q => ">" + q.Heading)],
            [
                .. answers.Select(a =>
                    (IReadOnlyList<string>)
                        [a.Sky.Name, Rate(a.Sky), .. quantities.Select(q => Cell(a.Answer, q.Name, absent))]
                ),
            ]
        );

    /// <summary>An answer for one sky as a member of "skies", in the words of its document.</summary>
    public static SkyMember Member(SkyRate sky, Answer answer, AnswerWords words) =>
        new(sky.Name, sky.Rate, sky.Assumptions, words.Sentence, words.Word, answer.Quantities, answer.Intervals);

    /// <summary>"a suburban sky, broad band (4.48 e⁻/px/s, assumed)", or "a sky of 0.5 e⁻/px/s".</summary>
    public static string Named(SkyRate sky) =>
        NamedSkies.All.Contains(sky)
            ? $"a {sky.Name} ({Rate(sky)}, assumed)"
            : $"a sky of {Plain.Rate(sky.Rate.Value)}";

    public static string Rate(SkyRate sky) =>
        sky.Rate.StandardUncertainty > 0
            ? QuantityText.Of(sky.Rate)
            : $"{QuantityText.Number(sky.Rate.Value, 3)} {QuantityText.Unit(sky.Rate.Unit)}";

    private static string Cell(Answer answer, string name, string absent) =>
        answer.Quantities.GetValueOrDefault(name) is { } value ? QuantityText.Of(value) : absent;
}

/// <summary>The answer for one of several skies.</summary>
internal sealed record SkyMember(
    string Name,
    Measurement Rate,
    IReadOnlyList<string> Assumptions,
    string Sentence,
    string Verdict,
    IReadOnlyDictionary<string, Measurement?> Quantities,
    IReadOnlyDictionary<string, Interval> Intervals
);
