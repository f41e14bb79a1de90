using SensorProfile.Decisions.FlatPlan;
using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Flats;

/// <summary>A number of flats and their level in words.</summary>
internal static class FlatPlanWords
{
    private const double Half = 0.5,
        AboutHalf = 0.025;

    internal static AnswerWords Phrase(FlatPlanAnswer answer) =>
        new(Sentence(answer), string.Join(" ", Reasons(answer)), answer.Verdict) { Cautions = Cautions.Flats };

    /// <summary>"about half of full well (32 000 ADU)", "the level of your brightest flats (41 000 ADU)".</summary>
    internal static string At(FlatLevel level)
    {
        string where =
            level.Share is not double share ? "the level of your brightest flats"
            : Math.Abs(share - Half) <= AboutHalf ? "about half of full well"
            : $"about {Plain.Number(100 * share, 2)} % of full well";
        return $"{where} ({(level.Adu is double adu ? $"{Rounded(adu)} ADU" : $"{Rounded(level.Electrons)} e⁻")})";
    }

    /// <summary>What sets the level: "the response bends above it".</summary>
    private static string Limit(FlatPlanAnswer answer) =>
        answer.LevelLimit switch
        {
            FlatLevelLimit.Saturation => "above it the brightest pixels leave the linear range",
            FlatLevelLimit.Linearity => answer.Level.Straight
                ? "the response bends above it"
                : "the response is straightest there",
            _ => "no brighter flats were measured",
        };

    private static string Sentence(FlatPlanAnswer answer)
    {
        string loss = Plain.Percent(answer.Limits.NoiseLoss),
            take = $"ake {Plain.Whole(answer.Flats)} flats at {At(answer.Level)}";
        if (answer.Verdict == FlatPlanVerdict.Limited)
            return $"{(answer.Stack.DitherPositions > 1 ? "Dither over more positions" : "Dither")} and t{take}: the flat-field "
                + $"residual costs this stack {Cost(answer, QuantityNames.LossByPattern)} however many you take, and {loss} is "
                + "accepted.";
        return $"T{take}: "
            + (
                answer.FewestForHits
                    ? "the fewest that can show up a spoilt one."
                    : $"fewer would cost this stack more than {loss}."
            );
    }

    private static IEnumerable<string> Reasons(FlatPlanAnswer answer)
    {
        yield return $"A master flat multiplies the sky by its own noise, {Places(answer.Stack)}; 20 flats would cost "
            + $"{Cost(answer, QuantityNames.LossAt20Flats)}.";
        yield return answer.LevelLimit == FlatLevelLimit.Given
            ? $"The best level would be {At(Best(answer))}."
            : $"Brighter flats would mean fewer, but this is as bright as advised: {Limit(answer)}.";
        if (answer.Dithered is { } dithered && dithered.Flats < answer.Flats)
            yield return $"Dithered over {Plain.Whole(dithered.Stack.DitherPositions)} positions, "
                + $"{Plain.Whole(dithered.Flats)} flats would do.";
    }

    /// <summary>The level that would have been advised.</summary>
    private static FlatLevel Best(FlatPlanAnswer answer) =>
        answer.Levels.LastOrDefault(l => l is { Straight: true, Unsaturated: true })
        ?? answer.Levels.MinBy(l => l.Bend ?? 0)!;

    private static string Places(StackConditions stack) =>
        stack.DitherPositions > 1
            ? $"spread by dithering over {Plain.Whole(stack.DitherPositions)} positions in {Plain.Whole(stack.Lights)} lights"
        : stack.Lights > 1 ? $"at the same place in all {Plain.Whole(stack.Lights)} lights"
        : "in this one light";

    private static string Cost(FlatPlanAnswer answer, string quantity) =>
        Plain.Percent((answer.Quantities[quantity]?.Value ?? 0) / 100);

    /// <summary>A level to aim at, rounded to two digits.</summary>
    private static string Rounded(double level)
    {
        double step = Math.Pow(10, Math.Max(Math.Floor(Math.Log10(Math.Max(level, 1))) - 1, 0));
        return QuantityText.Count((long)(Math.Round(level / step) * step));
    }
}
