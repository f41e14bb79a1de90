using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>A tolerance in words.</summary>
internal static class ToleranceWords
{
    private const double Least = 0.01; // °C; below it an answer says "less than"

    private const string SameNight = "take the darks at the temperature of the lights, on the same night";

    internal static string Threshold(BindingCause cause, LossLimits limits) =>
        cause switch
        {
            BindingCause.Typical => $"spread raises the noise of the stack by {Plain.Percent(limits.NoiseLoss)}",
            BindingCause.HotPixels =>
                $"{Plain.Percent(limits.HotShare)} of the pixels beyond {Plain.Number(limits.HotFactor)} times the noise of the stack",
            BindingCause.Glow => $"{Smooth(limits)} at the peak of the glow",
            _ => $"{Smooth(limits)} as a gradient, with a flat that falls off by {Plain.Percent(limits.FlatFallOff)}",
        };

    /// <summary>"0.5 of the noise of the stack", or that noise averaged over a scale.</summary>
    private static string Smooth(LossLimits limits) =>
        limits.SmoothPixels is double scale
            ? $"{Plain.Number(limits.SmoothFactor)} times the noise of the stack averaged over {Plain.Number(scale)} × "
                + $"{Plain.Number(scale)} px"
            : $"{Plain.Number(limits.GlowFactor)} of the noise of the stack";

    internal static AnswerWords Phrase(ToleranceAnswer answer) =>
        new(
            answer.OtherSkies.Count == 0
                ? Sentence(answer)
                : $"{Sentence(answer)} (Judged for a {answer.Sky.Name}, the strictest of three.)",
            string.Join(" ", [Reason(answer), .. Settled(answer), .. Bought(answer)]),
            answer.Verdict
        );

    /// <summary>Warnings about the tolerance.</summary>
    internal static IEnumerable<Finding> Findings(ToleranceAnswer answer)
    {
        if (Tighter(answer) < DarkTolerance.CoolerHolds)
            yield return new Finding(
                FindingCodes.ToleranceBelowCoolers,
                Severity.Warning,
                $"From night to night even a cooler repeats only to about {Plain.Celsius(DarkTolerance.CoolerHolds)}; these lights need "
                    + $"better: {WayOut(answer)}."
            );
    }

    private static string Sentence(ToleranceAnswer answer)
    {
        if (!answer.SpreadKnown)
            return "Cannot tell how far off darks may be: the profile does not say how dark current spreads over the pixels.";
        string warm = Limit(answer, QuantityNames.ToleranceWarmer) is double w
            ? $"{AtMost(w)} warmer"
            : "any amount warmer";
        string cold =
            Limit(answer, QuantityNames.ToleranceColder) is not double c ? "any amount colder"
            // "at most" is said once for both sides
            : Limit(answer, QuantityNames.ToleranceWarmer) is >= Least
                ? $"{AtMost(c).Replace("at most ", "", StringComparison.Ordinal)} colder"
            : $"{AtMost(c)} colder";
        if (answer is { BeyondCoolers: true, BindingCause: { } near })
            return $"No darks of another night come as close as this stack needs ({warm} or {cold}, for {Words(near)}): "
                + $"{WayOut(answer)}.";
        return answer.Verdict == ToleranceVerdict.CannotTell
            ? $"Cannot tell the limit well; the best guess is darks {warm} or {cold}. Take them at the temperature "
                + "of the lights."
            : (FarOutside(answer) ? "Extrapolated, far outside the measured range: use" : "Use")
                + $" darks {warm} or {cold} than the lights"
                + (answer.BindingCause is { } b ? $": {Words(b)} set the limit." : ": nothing here sets a limit.");
    }

    private static bool FarOutside(ToleranceAnswer answer) =>
        answer.Findings.Any(f => f.Code == FindingCodes.ToleranceExtrapolated);

    private static double? Limit(ToleranceAnswer answer, string quantity) =>
        answer.Quantities.GetValueOrDefault(quantity)?.Value;

    /// <summary>The smaller of the two temperature limits, °C.</summary>
    private static double? Tighter(ToleranceAnswer answer) =>
        SideLimits.Smaller(Limit(answer, QuantityNames.ToleranceWarmer), Limit(answer, QuantityNames.ToleranceColder));

    /// <summary>What to do where not even a cooler holds the limit.</summary>
    private static string WayOut(ToleranceAnswer answer) =>
        answer switch
        {
            // dithering does not help: a smooth residual is the same at all positions
            { BindingCause: BindingCause.Glow or BindingCause.Level } => SameNight,
            { Stack.DitherPositions: 1, Dithered: { } d } when Tighter(d) < DarkTolerance.CoolerHolds => SameNight
                + ", dither over as many positions as you can and reject outliers",
            { Stack.DitherPositions: 1 } => "dither and reject outliers, or " + SameNight,
            { Stack.Rejection: Rejection.None } => "reject outliers, or " + SameNight,
            _ => SameNight,
        };

    private static IEnumerable<string> Settled(ToleranceAnswer answer)
    {
        if (answer.Settled is { } outcome)
            yield return SettlingWords.Sentence(outcome, answer.Settling);
    }

    /// <summary>How far off darks may be with dithering.</summary>
    private static IEnumerable<string> Bought(ToleranceAnswer answer)
    {
        if (answer.Dithered is not { } dithered)
            yield break;
        string limit = Tighter(dithered) is double tighter ? $"{AtMost(tighter)} off would do" : "any darks would do";
        yield return $"Dithered over {Plain.Whole(dithered.Stack.DitherPositions)} positions with outliers rejected, {limit}.";
    }

    /// <summary>"at most 0.19 °C", "less than 0.01 °C".</summary>
    private static string AtMost(double limit) =>
        limit < Least ? $"less than {Plain.Celsius(Least)}" : $"at most {Plain.CelsiusAtMost(limit)}";

    private static string Reason(ToleranceAnswer answer) =>
        $"The stack of {Plain.Whole(answer.Stack.Lights)} × {Plain.Seconds(answer.Stack.ExposureSeconds)} at "
        + $"{Plain.Celsius(answer.Stack.TemperatureCelsius)} is judged against its own noise"
        + (answer.BindingCause is { } b ? $"; the first limit reached is: {Threshold(b, answer.Limits)}" : "")
        + (
            Limit(answer, QuantityNames.ToleranceExposure) is double s
                ? $"; the exposure may differ by {SecondsAtMost(s)}."
                : "; the exposure may differ by any amount."
        );

    /// <summary>A limit, rounded down in the third digit: "at most 12.3 s", "less than 0.01 s".</summary>
    private static string SecondsAtMost(double limit)
    {
        if (limit < Least)
            return $"less than {Plain.Seconds(Least)}";
        double step = Math.Pow(10, Math.Floor(Math.Log10(limit)) - 2);
        return $"at most {Plain.Seconds(Math.Floor(limit / step + 1e-9) * step)}";
    }

    private static string Words(BindingCause cause) =>
        cause switch
        {
            BindingCause.Typical => "the typical pixels",
            BindingCause.HotPixels => "hot pixels",
            BindingCause.Glow => "glow residuals",
            _ => "level residuals",
        };
}
