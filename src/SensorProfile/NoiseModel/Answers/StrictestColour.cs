using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;

namespace SensorProfile.NoiseModel.Answers;

/// <summary>Asks every colour of a camera that scales them apart, and answers for the strictest.</summary>
internal static class StrictestColour
{
    /// <summary>The answer of the mode, or of its strictest colour with those of all colours beside it.</summary>
    /// <param name="mode">The mode.</param>
    /// <param name="ask">The question.</param>
    /// <param name="order">Smallest for the strictest answer.</param>
    /// <param name="quantity">The number that is told colour by colour.</param>
    internal static T Ask<T, TKey>(ModeProfile mode, Func<ModeProfile, T> ask, Func<T, TKey> order, string quantity)
        where T : Answer
    {
        (string Colour, T Answer)[] all = [.. ColourModes.Of(mode).Select(c => (c.Name, ask(c.Mode)))];
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

    /// <summary>Says whose answer it is.</summary>
    /// <param name="strictest">The colour.</param>
    /// <param name="all">What each colour alone would be told.</param>
    internal static Finding Note(string strictest, params IReadOnlyList<(string Colour, string Told)> all) =>
        new(
            FindingCodes.ColoursApart,
            Severity.Note,
            "The colours of this camera are scaled apart, so each was answered by itself; this is the answer of the "
                + $"strictest, {strictest}"
                + (all.Count == 0 ? "." : $" ({string.Join(", ", all.Select(each => $"{each.Colour} {each.Told}"))}).")
        );

    private static string Told(Answer answer, string quantity) =>
        answer.Quantities.GetValueOrDefault(quantity) is { } value
            ? $"{Plain.Number(value.Value)} {QuantityText.Unit(value.Unit)}"
            : "no limit";
}
