namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// Checks a question against the profile: invalid questions are refused; those just beyond the measured range are
/// answered, with a finding.
/// </summary>
internal static class Guard
{
    internal static void Sky(Measurement sky)
    {
        if (!(sky.Value > 0) || double.IsInfinity(sky.Value))
            throw Refuse.BadArgument(
                FindingCodes.SkyNotPositive,
                $"The sky must be a rate above 0 e⁻/px/s, not {Plain.Number(sky.Value)}: give it as a number, "
                    + "measure it on your lights, or leave it out for a usual one."
            );
    }

    internal static void Conditions(StackConditions stack)
    {
        Sky(stack.Sky);
        Refuse.UnlessPositive(stack.ExposureSeconds, FindingCodes.ExposureNotPositive, "exposure", "s");
        if (!double.IsFinite(stack.TemperatureCelsius))
            throw Refuse.BadArgument(
                FindingCodes.TemperatureNotANumber,
                "The temperature of the lights must be a number in °C."
            );
        Refuse.UnlessCount(stack.Lights, 1, FindingCodes.LightsNotPositive, "lights");
        Refuse.UnlessCount(stack.DitherPositions, 1, FindingCodes.DitherNotPositive, "dither positions");
        if (stack.DitherPositions > stack.Lights)
            throw Refuse.BadArgument(
                FindingCodes.DitherAboveLights,
                $"{Plain.Whole(stack.Lights)} lights cannot have {Plain.Whole(stack.DitherPositions)} dither "
                    + "positions: give at most one position per light."
            );
        if (
            stack.Rejection is Rejection.Median or Rejection.Winsorised
            && stack.DitherPositions is > 1 and < StackConditions.MinPositions
        )
            throw Refuse.BadArgument(
                FindingCodes.RejectionNeedsPositions,
                $"A {(stack.Rejection == Rejection.Median ? "median" : "winsorised mean")} of fewer than "
                    + $"{Plain.Whole(StackConditions.MinPositions)} dither positions cannot be judged: two hot "
                    + "pixels that meet at one place of the sky pull it with them. Describe the stack as a plain mean, or dither "
                    + "over more positions."
            );
    }

    /// <summary>Refuses an exposure far beyond the darks of the profile; notes one that is merely longer.</summary>
    internal static IEnumerable<Finding> Exposure(SensorReader reader, double exposureSeconds)
    {
        double longest = reader.LongestExposure;
        if (longest <= 0 || exposureSeconds <= longest * (1 + 1e-9))
            return [];
        if (exposureSeconds > Refuse.LongestExposureFactor * longest)
            throw Refuse.CannotTell(
                FindingCodes.ExposureOutsideProfile,
                $"An exposure of {Plain.Seconds(exposureSeconds)} is far beyond the darks of this profile, "
                    + $"which end at {Plain.Seconds(longest)}: add darks of {Plain.Seconds(exposureSeconds)} and "
                    + "characterise again."
            );
        return
        [
            new Finding(
                FindingCodes.ExposureBeyondDarks,
                Severity.Warning,
                $"The longest dark of the profile is {Plain.Seconds(longest)}; for {Plain.Seconds(exposureSeconds)} "
                    + "the answer assumes that the dark signal keeps growing in proportion."
            ),
        ];
    }

    /// <summary>Refuses a temperature far outside the profile; notes one that is merely outside.</summary>
    internal static IEnumerable<Finding> Temperature(SensorReader reader, double celsius, string what)
    {
        (double low, double high) = reader.Range;
        if (reader.Outside(celsius) <= 0.05)
            return [];
        string range = $"{Plain.Celsius(low)} to {Plain.Celsius(high)}";
        if (Refused(reader, celsius, what) is { } refusal)
            throw refusal;
        return
        [
            new Finding(
                FindingCodes.Extrapolated,
                Severity.Warning,
                $"The {what} of {Plain.Celsius(celsius)} lies outside the measured range, {range}; the answer there "
                    + "rests on the fitted law, not on darks."
            ),
        ];
    }

    /// <summary>Why a temperature is too far outside the profile; null when it is not.</summary>
    internal static DecisionRefusedException? Refused(SensorReader reader, double celsius, string what) =>
        reader.Outside(celsius) <= Refuse.ExtrapolationCelsius
            ? null
            : Refuse.CannotTell(
                FindingCodes.TemperatureOutsideProfile,
                $"The {what} of {Plain.Celsius(celsius)} is more than "
                    + $"{Plain.Whole((long)Refuse.ExtrapolationCelsius)} °C outside the measured range, "
                    + $"{Plain.Celsius(reader.Range.Low)} to {Plain.Celsius(reader.Range.High)}: add darks near "
                    + $"{Plain.Celsius(celsius)} and characterise again."
            );
}
