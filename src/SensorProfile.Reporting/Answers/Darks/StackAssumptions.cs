using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>What an answer about darks assumes about the stack, and which parts the user gave.</summary>
internal static class StackAssumptions
{
    /// <summary>Dithering, rejection, sky and accepted loss, for the answers that judge darks.</summary>
    /// <param name="stack">The stack as the user described it.</param>
    /// <param name="sky">The sky of the answer; null for the default one.</param>
    /// <param name="lossGiven">Whether the accepted loss was given.</param>
    public static IReadOnlyList<AnswerAssumption> Of(StackDescription stack, SkyRate? sky, bool lossGiven)
    {
        int positions = stack.DitherPositions ?? 1;
        string rejection = EnumWord.Of(stack.Rejection);
        string loss = $"accepted loss {QuantityText.Number(100 * stack.Limits.NoiseLoss)} %";
        return
        [
            AnswerAssumption.Sky(NamedSkies.OrDefault(sky)),
            AnswerAssumption.Option(
                "ditherPositions",
                positions,
                stack.DitherPositions is not null,
                positions == 1 ? "no dithering" : $"{QuantityText.Count(positions)} dither positions"
            ),
            AnswerAssumption.Option(
                "rejection",
                rejection,
                stack.Rejection != Rejection.None,
                stack.Rejection switch
                {
                    Rejection.None => "no rejection of outliers",
                    Rejection.SigmaClip => "outliers clipped, once, at 3 standard deviations",
                    Rejection.Winsorised => "outliers set to 3 standard deviations, once",
                    _ => "the median of the lights",
                }
            ),
            AnswerAssumption.Option("acceptedLoss", stack.Limits.NoiseLoss, lossGiven, loss),
            AnswerAssumption.Option(
                "smoothScale",
                stack.Limits.SmoothPixels,
                stack.Limits.SmoothPixels is not null,
                stack.Limits.SmoothPixels is double scale
                    ? $"smooth residuals seen from {QuantityText.Number(stack.Limits.SmoothFactor)} times the noise "
                        + $"averaged over {QuantityText.Number(scale)} px square"
                    : $"smooth residuals seen from {QuantityText.Number(stack.Limits.GlowFactor)} of the noise of one pixel"
            ),
        ];
    }

    /// <summary>The temperature of the lights.</summary>
    /// <param name="celsius">°C.</param>
    /// <param name="source">Where it comes from.</param>
    public static AnswerAssumption Temperature(double celsius, AssumptionSource source) =>
        new("temperature", celsius, source, $"lights at {QuantityText.Temperature(celsius)}");
}
