using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames.Survey;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>
/// The verdict on a pair of light set and dark set in words, and what would settle one that cannot be told.
/// </summary>
internal static class PairWords
{
    private const double Apart = 10; // between the temperatures of a first characterisation, °C

    internal static (BindingCause Cause, string Reason) Cause(
        PairLoads loads,
        MatchQuestion question,
        StackConditions stack,
        DarkFrames darks,
        double difference
    )
    {
        BindingCause cause = loads.Mismatch.Binding;
        string warmer =
            Said.Celsius(Math.Abs(difference)) is var degrees && degrees != Said.Celsius(0)
                ? $" {degrees} {(difference < 0 ? "colder" : "warmer")}"
                : "";
        string longer = DarkMatching.SameExposure(stack.ExposureSeconds, darks.ExposureSeconds)
            ? ""
            : $" of {Said.Seconds(darks.ExposureSeconds)} instead of {Said.Seconds(stack.ExposureSeconds)}";
        string apart = warmer + longer is ""
            ? "darks like the lights"
            : $"darks{warmer}{(warmer.Length > 0 && longer.Length > 0 ? " and" : "")}{longer}";
        if (loads.Loss > question.Stack.Limits.NoiseLoss && loads.Mismatch.Largest <= 1)
            return (
                BindingCause.NumberOfDarks,
                $"{Said.Whole(darks.Frames)} darks for a stack of {Said.Whole(stack.Lights)} lights"
            );
        string what = cause switch
        {
            BindingCause.Typical => "the spread over typical pixels",
            BindingCause.HotPixels => "hot pixels",
            BindingCause.Glow => "the residual of the glow",
            _ => "the level residual",
        };
        return (cause, $"{what} with {apart}, {Said.Percent(loads.Mismatch.Largest)} of the limit");
    }

    /// <summary>
    /// No profile of this mode, or one without the spread over pixels: the frames of a first characterisation.
    /// </summary>
    internal static LightMatch NoProfile(LightMatch plain, SensorReader? reader, SetSummary lights, SetSummary darks)
    {
        double longest = Math.Max(lights.Exposure!.Value, darks.Exposure!.Value);
        if (reader is not null)
        {
            SettlingFrames[] more =
            [
                SettlingFrames.OfDistribution(reader, longest, Math.Round(lights.Temperature!.Value)),
            ];
            return plain with
            {
                Settling = more,
                Reason =
                    "Exposure or temperature differ, and the profile does not say how dark current spreads over the "
                    + $"pixels: {SettlingFrames.Words(more)} would; characterise again with them.",
            };
        }
        double middle = Math.Round((lights.Temperature!.Value + darks.Temperature!.Value) / 2);
        double[] temperatures = [middle - Apart, middle, middle + Apart];
        SettlingFrames[] session =
        [
            SettlingFrames.Of("bias", null, null, MissingMeasurements.BiasForPixelNoise),
            SettlingFrames.Of("flat", null, null, 2 * MissingMeasurements.FlatLevels),
            .. from celsius in temperatures
            from seconds in new[] { longest / 10, longest / 3, longest }
            select SettlingFrames.Of(
                "dark",
                Math.Round(seconds, seconds < 10 ? 1 : 0),
                celsius,
                SettlingFrames.EachDark
            ),
        ];
        return plain with
        {
            Settling = session,
            Reason =
                "Exposure or temperature differ, and no profile says what that costs: characterise this mode of "
                + $"the camera ({SettlingFrames.Words(session)}) and give its profile.",
        };
    }

    /// <summary>Lights or darks outside of what the profile was measured at.</summary>
    internal static LightMatch OutOfReach(
        LightMatch plain,
        SensorReader reader,
        string message,
        SetSummary lights,
        SetSummary darks
    )
    {
        (double low, double high) = reader.Range;
        double farthest =
            reader.Outside(lights.Temperature!.Value) > reader.Outside(darks.Temperature!.Value)
                ? lights.Temperature.Value
                : darks.Temperature!.Value;
        IReadOnlyList<SettlingFrames> frames =
            reader.Outside(farthest) > Refuse.ExtrapolationCelsius
                ? SettlingFrames.NewTemperature(Math.Max(lights.Exposure!.Value, darks.Exposure!.Value), farthest)
                :
                [
                    SettlingFrames.Of(
                        "dark",
                        lights.Exposure!.Value,
                        Math.Round(Math.Clamp(lights.Temperature.Value, low, high)),
                        SettlingFrames.EachDark
                    ),
                ];
        return plain with { Settling = frames, Reason = $"{message.TrimEnd('.')} ({SettlingFrames.Words(frames)})." };
    }
}
