using SensorProfile.Decisions.Settling;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.Tolerance;

/// <summary>How far darks may be from lights in °C and in seconds, and what sets that limit.</summary>
public static class DarkTolerance
{
    private const double CannotTellRelative = 0.5; // a limit known to no better than half of itself is no advice

    /// <summary>Answers for the given sky, or for three named skies side by side.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="question">The stack.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile cannot answer it.</exception>
    public static ToleranceAnswer Find(CameraProfile profile, ModeProfile mode, ToleranceQuestion question)
    {
        question.Limits.Check();
        var reader = SensorReader.Of(profile, mode);
        if (question.Sky is { } sky)
            return Solve(profile, reader, question, sky);
        ToleranceAnswer[] answers = [.. NamedSkies.All.Select(named => Solve(profile, reader, question, named))];
        ToleranceAnswer strictest = answers.MinBy(a =>
            a.Quantities["toleranceWarmer"]?.Value ?? double.PositiveInfinity
        )!;
        return strictest with
        {
            Sentence =
                $"{strictest.Sentence} (Judged for a {strictest.Sky.Name}, the strictest of three; give your own sky with --sky.)",
            OtherSkies = [.. answers.Where(a => a != strictest)],
        };
    }

    private static ToleranceAnswer Solve(
        CameraProfile profile,
        SensorReader reader,
        ToleranceQuestion question,
        SkyRate sky
    )
    {
        StackConditions stack = question.At(question.TemperatureCelsius ?? reader.Best.PixelReference, sky);
        Guard.Conditions(stack);
        List<Finding> findings =
        [
            .. reader.Notes,
            .. Guard.Exposure(reader, stack.ExposureSeconds),
            .. Guard.Temperature(reader, stack.TemperatureCelsius, "temperature of the lights"),
        ];
        if (question.TemperatureCelsius is null)
            findings.Add(
                new Finding(
                    "temperature-assumed",
                    Severity.Note,
                    "No temperature of the lights was given; the profile's reference temperature of "
                        + $"{Said.Celsius(stack.TemperatureCelsius)} is used: give --temperature."
                )
            );
        findings.AddRange(FullPixels.Findings(reader, sky.Rate.Value, stack.ExposureSeconds, stack.TemperatureCelsius));
        bool known = reader.Best.Pixels is not null;
        if (!known)
            findings.Add(Missing.Distribution("the spread over pixels and the hot pixels cannot limit this answer"));
        if (question.Limits.HotShare * reader.Camera.Width * reader.Camera.Height < 1)
            findings.Add(
                new Finding(
                    "hot-share-below-one-pixel",
                    Severity.Warning,
                    "The accepted share of hot pixels is less than one pixel of this sensor: take a larger share."
                )
            );

        MismatchLimits best = Decide(reader.Best, stack, sky.Rate.Value, question);
        MismatchSpreads spreads = MismatchLimits.Spreads(
            Propagation.Through(reader, sky.Rate, (model, s) => Decide(model, stack, s, question, best).Row())
        );
        SideLimits all = best.All;
        var quantities = new QuantityList();
        string method = "smallest of four causes, uncertainties drawn";
        quantities.Add("toleranceWarmer", all.Warmer, "°C", method, spreads.All.Warmer);
        quantities.Add("toleranceColder", all.Colder, "°C", method, spreads.All.Colder);
        quantities.Add("toleranceExposure", all.Exposure, "s", method, spreads.All.Exposure);
        CauseTolerance[] causes =
        [
            .. CauseLoads.Mismatches.Select(cause =>
                Cause(
                    cause,
                    best.Of(cause),
                    spreads.ByCause[cause],
                    question.Limits,
                    known || cause is BindingCause.Glow or BindingCause.Level
                )
            ),
        ];
        CheckReach(reader, stack, all, findings);
        double tighter = all.Tighter ?? double.PositiveInfinity;
        double uncertainty =
            all.Warmer == tighter ? spreads.All.Warmer.StandardDeviation : spreads.All.Colder.StandardDeviation;
        bool uncertain = !known || (double.IsFinite(tighter) && uncertainty > CannotTellRelative * tighter);
        SettlingSearch? settling =
            !uncertain ? null
            : !known ? ToleranceSettling.OfDistribution(reader, stack)
            : ToleranceSettling.Of(profile, reader, question, sky, stack, best, CannotTellRelative);
        return new ToleranceAnswer
        {
            Sky = sky,
            Stack = stack,
            Sentence = Sentence(all, best.Binding, uncertain, known),
            Reason = Reason(stack, question, best) + (settling is null ? "" : " " + settling.Sentence),
            Settling = settling?.Frames ?? [],
            Verdict = uncertain ? Answer.CannotTell : "answered",
            BindingCause = best.Binding,
            Quantities = quantities.Quantities,
            Intervals = quantities.Intervals,
            Causes = causes,
            Curve = Curve(reader, stack, question),
            Findings = findings,
            RulesOfThumb =
            [
                RulesOfThumb.FiveDegrees(all.Warmer, all.Colder, uncertainty),
                RulesOfThumb.Dithering(stack.DitherPositions),
            ],
        };
    }

    private static MismatchLimits Decide(
        SensorModel sensor,
        StackConditions stack,
        double sky,
        ToleranceQuestion question,
        MismatchLimits? near = null
    ) => MismatchLimits.Of(new DarkMismatch(sensor, stack, sky, question.Limits), question.Scaled, near);

    private static CauseTolerance Cause(
        BindingCause cause,
        SideLimits best,
        SideSpreads spreads,
        LossLimits limits,
        bool known
    )
    {
        static Measurement? Of(double? value, Propagation.Spread spread, string unit) =>
            value is double known
                ? new Measurement(known, spread.StandardDeviation, unit, Propagation.Draws, "uncertainties drawn")
                : null;
        return new CauseTolerance(
            cause,
            Threshold(cause, limits),
            Of(best.Warmer, spreads.Warmer, "°C"),
            Of(best.Colder, spreads.Colder, "°C"),
            Of(best.Exposure, spreads.Exposure, "s"),
            known
        );
    }

    private static string Threshold(BindingCause cause, LossLimits limits) =>
        cause switch
        {
            BindingCause.Typical => $"spread raises the noise of the stack by {Said.Percent(limits.NoiseLoss)}",
            BindingCause.HotPixels =>
                $"{Said.Percent(limits.HotShare)} of the pixels beyond {Said.Number(limits.HotFactor)} times the noise of the stack",
            BindingCause.Glow => $"{Said.Number(limits.GlowFactor)} of the noise of the stack at the peak of the glow",
            _ => $"{Said.Number(limits.GlowFactor)} of the noise of the stack as a gradient, with a flat that falls "
                + $"off by {Said.Percent(limits.FlatFallOff)}",
        };

    private static void CheckReach(SensorReader reader, StackConditions stack, SideLimits best, List<Finding> findings)
    {
        double warm = stack.TemperatureCelsius + (best.Warmer ?? 0),
            cold = stack.TemperatureCelsius - (best.Colder ?? 0);
        if (
            warm > reader.Range.High + Refuse.ExtrapolationCelsius
            || cold < reader.Range.Low - Refuse.ExtrapolationCelsius
        )
            findings.Add(
                new Finding(
                    "tolerance-extrapolated",
                    Severity.Warning,
                    $"The limit lies more than {Said.Whole((long)Refuse.ExtrapolationCelsius)} °C outside the "
                        + $"measured range of {Said.Celsius(reader.Range.Low)} to {Said.Celsius(reader.Range.High)}; "
                        + "trust it only as far as that range."
                )
            );
    }

    private static List<TolerancePoint> Curve(SensorReader reader, StackConditions stack, ToleranceQuestion question)
    {
        var mismatch = new DarkMismatch(reader.Best, stack, stack.Sky.Value, question.Limits);
        var points = new List<TolerancePoint>();
        double[] steps = [.. Enumerable.Range(0, 31).Select(i => Math.Round(0.02 * Math.Pow(10, i / 10.0), 4))];
        foreach (double apart in steps.Reverse().Select(step => -step).Append(0).Concat(steps))
        {
            CauseLoads loads = mismatch.Loads(stack.TemperatureCelsius + apart, stack.ExposureSeconds, question.Scaled);
            points.Add(new TolerancePoint(apart, loads.Typical, loads.HotPixels, loads.Glow, loads.Level));
        }
        return points;
    }

    private static string Sentence(SideLimits best, BindingCause? binding, bool uncertain, bool known)
    {
        if (!known)
            return "Cannot tell how far darks may be: the profile does not say how dark current spreads over the pixels.";
        string warm = best.Warmer is double w ? $"at most {Said.CelsiusAtMost(w)} warmer" : "any amount warmer";
        string cold = best.Colder is double c ? $"{Said.CelsiusAtMost(c)} colder" : "any amount colder";
        return uncertain
            ? $"Cannot tell the limit well: darks {warm} or {cold} is the best guess; take them at the temperature "
                + "of the lights."
            : $"Use darks {warm} or {cold} than the lights"
                + (binding is { } b ? $": {Words(b)} set the limit." : ": nothing limits them here.");
    }

    private static string Reason(StackConditions stack, ToleranceQuestion question, MismatchLimits best) =>
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
