using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;

namespace SensorProfile.NoiseModel.Answers;

/// <summary>
/// Answers a question for each colour of a camera that scales its colours separately, and returns the strictest answer.
/// </summary>
internal static class StrictestColour
{
    /// <summary>
    /// The answer for the mode, or for its strictest colour with the numbers of all colours attached.
    /// </summary>
    /// <param name="mode">The mode.</param>
    /// <param name="ask">The question.</param>
    /// <param name="order">Sort key: smallest for the strictest answer.</param>
    /// <param name="quantity">The number reported for each colour.</param>
    internal static T Ask<T, TKey>(ModeProfile mode, Func<ModeProfile, T> ask, Func<T, TKey> order, string quantity)
        where T : Answer
    {
        (string Colour, T Answer)[] all = [.. ColourModes.Find(mode).Select(c => (c.Name, ask(c.Mode)))];
        if (all.Length == 0)
            return ask(mode);
        (string strictest, T answer) = all.MinBy(each => order(each.Answer));
        return answer with
        {
            Colours = [.. all.Select(each => new ColourAnswer(each.Colour, each.Answer.Quantities))],
            Findings =
            [
                .. answer.Findings,
                Note(strictest, [.. all.Select(a => (a.Colour, Told(a.Answer, quantity)))]),
            ],
        };
    }

    /// <summary>Names the colour that the answer is for.</summary>
    /// <param name="strictest">The colour.</param>
    /// <param name="all">What each colour alone would allow.</param>
    internal static Finding Note(string strictest, params IReadOnlyList<(string Colour, string Told)> all) =>
        new(
            FindingCodes.ColoursApart,
            Severity.Note,
            "This camera scales its colours separately, so each was judged by itself; this answer is that of the "
                + $"strictest, {strictest}"
                + (all.Count == 0 ? "." : $" ({string.Join(", ", all.Select(each => $"{each.Colour} {each.Told}"))}).")
        );

    private static string Told(Answer answer, string quantity) =>
        answer.Quantities.GetValueOrDefault(quantity) is { } value
            ? $"{Plain.Number(value.Value)} {QuantityText.Unit(value.Unit)}"
            : "no limit";
}
