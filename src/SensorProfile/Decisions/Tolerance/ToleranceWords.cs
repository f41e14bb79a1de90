using SensorProfile.NoiseModel;

namespace SensorProfile.Decisions.Tolerance;

/// <summary>A tolerance in words.</summary>
internal static class ToleranceWords
{
    internal static string Threshold(BindingCause cause, LossLimits limits) =>
        cause switch
        {
            BindingCause.Typical => $"spread raises the noise of the stack by {Said.Percent(limits.NoiseLoss)}",
            BindingCause.HotPixels =>
                $"{Said.Percent(limits.HotShare)} of the pixels beyond {Said.Number(limits.HotFactor)} times the noise of the stack",
            BindingCause.Glow => $"{Said.Number(limits.GlowFactor)} of the noise of the stack at the peak of the glow",
            _ => $"{Said.Number(limits.GlowFactor)} of the noise of the stack as a gradient, with a flat that falls "
                + $"off by {Said.Percent(limits.FlatFallOff)}",
        };

    internal static string Sentence(
        SideLimits best,
        BindingCause? binding,
        bool uncertain,
        bool known,
        StackConditions stack
    )
    {
        if (!known)
            return "Cannot tell how far darks may be: the profile does not say how dark current spreads over the pixels.";
        string warm = best.Warmer is double w ? $"{AtMost(w)} warmer" : "any amount warmer";
        string cold = best.Colder is double c
            ? $"{AtMost(c).Replace("at most ", "", StringComparison.Ordinal)} colder"
            : "any amount colder";
        if (!uncertain && best.Tighter < DarkTolerance.CoolerHolds && binding is { } near)
            return $"No cooler holds the darks as near as this stack needs ({warm} or {cold}, for {Words(near)}): "
                + $"{WayOut(stack)}.";
        return uncertain
            ? $"Cannot tell the limit well: darks {warm} or {cold} is the best guess; take them at the temperature "
                + "of the lights."
            : $"Use darks {warm} or {cold} than the lights"
                + (binding is { } b ? $": {Words(b)} set the limit." : ": nothing limits them here.");
    }

    /// <summary>What to do where no cooler holds the limit.</summary>
    internal static string WayOut(StackConditions stack) =>
        stack switch
        {
            { DitherPositions: 1 } => "dither and reject outliers, or take the darks at the set point of the lights, "
                + "on the same night",
            { Rejection: Rejection.None } => "reject outliers, or take the darks at the set point of the lights, on "
                + "the same night",
            _ => "take the darks at the set point of the lights, on the same night",
        };

    /// <summary>What dithering would buy.</summary>
    internal static string Bought(ToleranceAnswer dithered)
    {
        Measurement? warmer = dithered.Quantities.GetValueOrDefault("toleranceWarmer"),
            colder = dithered.Quantities.GetValueOrDefault("toleranceColder");
        string limit = SideLimits.Smaller(warmer?.Value, colder?.Value) is double tighter
            ? $"{AtMost(tighter)} off would do"
            : "any darks would do";
        return $"Dithered over {Said.Whole(dithered.Stack.DitherPositions)} positions with outliers rejected, {limit}.";
    }

    /// <summary>"at most 0.19 °C", "less than 0.01 °C".</summary>
    internal static string AtMost(double limit) =>
        limit < 0.01 ? $"less than {Said.Celsius(0.01)}" : $"at most {Said.CelsiusAtMost(limit)}";

    internal static string Reason(StackConditions stack, ToleranceQuestion question, MismatchLimits best) =>
        $"The stack of {Said.Whole(stack.Lights)} × {Said.Seconds(stack.ExposureSeconds)} at "
        + $"{Said.Celsius(stack.TemperatureCelsius)} is judged against its own noise"
        + (best.Binding is { } b ? $"; the first limit reached is: {Threshold(b, question.Limits)}" : "")
        + (
            best.All.Exposure is double s
                ? $"; the exposure may differ by {Said.Seconds(s)}."
                : "; the exposure may differ by any amount."
        );

    private static string Words(BindingCause cause) =>
        cause switch
        {
            BindingCause.Typical => "the typical pixels",
            BindingCause.HotPixels => "hot pixels",
            BindingCause.Glow => "glow residuals",
            _ => "level residuals",
        };
}
