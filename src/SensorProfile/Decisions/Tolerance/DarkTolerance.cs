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
        var stack = new StackConditions
        {
            Sky = sky.Rate,
            ExposureSeconds = question.ExposureSeconds,
            TemperatureCelsius = question.TemperatureCelsius ?? reader.Best.PixelReference,
            Lights = question.Lights,
            DitherPositions = question.DitherPositions,
            RejectsOutliers = question.RejectsOutliers,
        };
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

        double?[] best = Decide(reader.Best, stack, sky.Rate.Value, question);
        Propagation.Spread[] spreads = Propagation.Through(reader, sky.Rate, (model, s) =>
            Decide(model, stack, s, question, best)
        );
        var quantities = new QuantityList();
        string method = "smallest of four causes, uncertainties drawn";
        quantities.Add("toleranceWarmer", best[0], "°C", method, spreads[0]);
        quantities.Add("toleranceColder", best[1], "°C", method, spreads[1]);
        quantities.Add("toleranceExposure", best[2], "s", method, spreads[2]);
        CauseTolerance[] causes =
        [
            .. Enumerable.Range(0, 4).Select(i => Cause(i, best, spreads, question.Limits, i >= 2 || known)),
        ];
        int? binding = Binding(best);
        CheckReach(reader, stack, best, findings);
        double tighter = DarkMismatch.Smaller(best[0], best[1]) ?? double.PositiveInfinity;
        double uncertainty = best[0] == tighter ? spreads[0].StandardDeviation : spreads[1].StandardDeviation;
        bool uncertain = !known || (double.IsFinite(tighter) && uncertainty > CannotTellRelative * tighter);
        SettlingSearch? settling =
            !uncertain ? null
            : !known ? ToleranceSettling.OfDistribution(reader, stack)
            : ToleranceSettling.Of(profile, reader, question, sky, stack, best, CannotTellRelative);
        return new ToleranceAnswer
        {
            Sky = sky,
            Stack = stack,
            Sentence = Sentence(best, binding, uncertain, known),
            Reason = Reason(stack, question, best, binding) + (settling is null ? "" : " " + settling.Sentence),
            Settling = settling?.Frames ?? [],
            Verdict = uncertain ? Answer.CannotTell : "answered",
            BindingCause = binding is int b ? CauseLoads.Names[b] : null,
            Quantities = quantities.Quantities,
            Intervals = quantities.Intervals,
            Causes = causes,
            Curve = Curve(reader, stack, question),
            Findings = findings,
            RulesOfThumb =
            [
                RulesOfThumb.FiveDegrees(best[0], best[1], uncertainty),
                RulesOfThumb.Dithering(stack.DitherPositions),
            ],
        };
    }

    /// <summary>Warmer, colder and exposure: first the smallest of all causes, then each cause.</summary>
    private static double?[] Decide(
        SensorModel sensor,
        StackConditions stack,
        double sky,
        ToleranceQuestion question,
        double?[]? near = null
    )
    {
        var mismatch = new DarkMismatch(sensor, stack, sky, question.Limits);
        double?[] all = new double?[15];
        for (int cause = 0; cause < 4; cause++)
        {
            all[3 + 3 * cause] = mismatch.Warmer(cause, question.Scaled, near?[3 + 3 * cause]);
            all[4 + 3 * cause] = mismatch.Colder(cause, question.Scaled, near?[4 + 3 * cause]);
            all[5 + 3 * cause] = mismatch.Exposure(cause, question.Scaled, near?[5 + 3 * cause]);
            for (int side = 0; side < 3; side++)
                all[side] = DarkMismatch.Smaller(all[side], all[3 + 3 * cause + side]);
        }
        return all;
    }

    private static int? Binding(double?[] best)
    {
        int cause = Enumerable
            .Range(0, 4)
            .MinBy(i => DarkMismatch.Smaller(best[3 + 3 * i], best[4 + 3 * i]) ?? double.PositiveInfinity);
        return best[3 + 3 * cause] is null && best[4 + 3 * cause] is null ? null : cause;
    }

    private static CauseTolerance Cause(
        int cause,
        double?[] best,
        Propagation.Spread[] spreads,
        LossLimits limits,
        bool known
    )
    {
        Measurement? Of(int side, string unit) =>
            best[3 + 3 * cause + side] is double value
                ? new Measurement(
                    value,
                    spreads[3 + 3 * cause + side].StandardDeviation,
                    unit,
                    Propagation.Draws,
                    "uncertainties drawn"
                )
                : null;
        string threshold = cause switch
        {
            0 => $"spread raises the noise of the stack by {Said.Percent(limits.NoiseLoss)}",
            1 =>
                $"{Said.Percent(limits.HotShare)} of the pixels beyond {Said.Number(limits.HotFactor)} times the noise of the stack",
            2 => $"{Said.Number(limits.GlowFactor)} of the noise of the stack at the peak of the glow",
            _ => $"{Said.Number(limits.GlowFactor)} of the noise of the stack as a gradient, with a flat that falls "
                + $"off by {Said.Percent(limits.FlatFallOff)}",
        };
        return new CauseTolerance(CauseLoads.Names[cause], threshold, Of(0, "°C"), Of(1, "°C"), Of(2, "s"), known);
    }

    private static void CheckReach(SensorReader reader, StackConditions stack, double?[] best, List<Finding> findings)
    {
        double warm = stack.TemperatureCelsius + (best[0] ?? 0),
            cold = stack.TemperatureCelsius - (best[1] ?? 0);
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

    private static string Sentence(double?[] best, int? binding, bool uncertain, bool known)
    {
        if (!known)
            return "Cannot tell how far darks may be: the profile does not say how dark current spreads over the pixels.";
        string warm = best[0] is double w ? $"at most {Said.CelsiusAtMost(w)} warmer" : "any amount warmer";
        string cold = best[1] is double c ? $"{Said.CelsiusAtMost(c)} colder" : "any amount colder";
        return uncertain
            ? $"Cannot tell the limit well: darks {warm} or {cold} is the best guess; take them at the temperature "
                + "of the lights."
            : $"Use darks {warm} or {cold} than the lights"
                + (binding is int b ? $": {Words(b)} set the limit." : ": nothing limits them here.");
    }

    private static string Reason(StackConditions stack, ToleranceQuestion question, double?[] best, int? binding) =>
        $"The stack of {Said.Whole(stack.Lights)} × {Said.Seconds(stack.ExposureSeconds)} at "
        + $"{Said.Celsius(stack.TemperatureCelsius)} is judged against its own noise"
        + (
            binding is int b
                ? $"; the first limit reached is: {Cause(b, best, new Propagation.Spread[15], question.Limits, true).Threshold}"
                : ""
        )
        + (
            best[2] is double s
                ? $"; the exposure may differ by {Said.Seconds(s)}."
                : "; the exposure may differ by any amount."
        );

    private static string Words(int cause) =>
        cause switch
        {
            0 => "the typical pixels",
            1 => "hot pixels",
            2 => "glow residuals",
            _ => "level residuals",
        };
}
