using SensorProfile.Decisions;

namespace SensorProfile.Cli.Replies;

/// <summary>The sky of an answer, and the skies side by side when the user gave none.</summary>
internal static class SkyFields
{
    /// <summary>Lines that say what was assumed.</summary>
    public static IReadOnlyList<string> Assumptions(IEnumerable<SkyRate> skies) =>
        [.. skies.SelectMany(s => s.Assumptions.Select(a => $"{s.Name}: {a}")).Distinct()];

    /// <summary>One row per sky: its name and rate, then the quantities asked for.</summary>
    public static ReplyTable SideBySide(IReadOnlyList<(SkyRate Sky, Answer Answer)> answers, IReadOnlyList<(string Name, string Heading)> quantities, string absent) =>
        new("", ["sky", ">e⁻/px/s", .. quantities.Select(q => ">" + q.Heading)],
            [.. answers.Select(a => (IReadOnlyList<string>)[a.Sky.Name, QuantityText.Number(a.Sky.Rate.Value, 3), .. quantities.Select(q => Cell(a.Answer, q.Name, absent))])]);

    /// <summary>An answer for one sky as a member of "skies".</summary>
    public static object Member(SkyRate sky, Answer answer) =>
        new { sky.Name, sky.Rate, sky.Assumptions, answer.Sentence, answer.Verdict, answer.Quantities, answer.Intervals };

    private static string Cell(Answer answer, string name, string absent) =>
        answer.Quantities.GetValueOrDefault(name) is { } value ? QuantityText.Of(value) : absent;
}
