namespace SensorProfile.NoiseModel;

/// <summary>The refusals of this room: one sentence for each cause.</summary>
internal static class Refuse
{
    /// <summary>Exposures up to this many times the longest measured dark are answered, with a finding.</summary>
    internal const double LongestExposureFactor = 5;

    /// <summary>Temperatures up to this far outside the measured range are answered, with a finding, °C.</summary>
    internal const double ExtrapolationCelsius = 10;

    internal static DecisionRefusedException BadArgument(string code, string message) =>
        new(RefusalKind.BadArgument, code, message);

    internal static DecisionRefusedException CannotTell(string code, string message) =>
        new(RefusalKind.CannotTell, code, message);

    internal static DecisionRefusedException CoolerTooWeak(double difference, double margin) =>
        BadArgument(
            FindingCodes.DifferenceTooSmall,
            $"A cooler that reaches {Plain.Number(difference)} °C below the ambient leaves nothing after "
                + $"{Plain.Number(margin)} °C in reserve."
        );

    internal static void UnlessPositive(double value, string code, string what, string unit)
    {
        if (!(value > 0) || double.IsInfinity(value))
            throw BadArgument(code, $"The {what} must be a number above 0 {unit}, not {Plain.Number(value)}.");
    }

    internal static void UnlessShare(double value, string code, string what)
    {
        if (!(value > 0 && value < 1))
            throw BadArgument(code, $"The {what} must be between 0 % and 100 %, not {Plain.Percent(value)}.");
    }

    internal static void UnlessCount(int value, int least, string code, string what)
    {
        if (value < least)
            throw BadArgument(
                code,
                $"The number of {what} must be at least {Plain.Whole(least)}, not {Plain.Whole(value)}."
            );
    }
}
