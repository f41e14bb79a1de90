namespace SensorProfile.Decisions;

/// <summary>Judges one dark set for one light set.</summary>
internal static class PairJudge
{
    private const double SameTemperature = 0.5;          // frames this close are pooled as one set anyway, °C
    private const double UsableHotLoad = 10, UsableOtherLoad = 2;   // times their limits

    internal static LightMatch Judge(SensorReader? reader, MatchQuestion question, SkyRate sky, SetSummary lights, SetSummary darks, int stackLights)
    {
        var plain = new LightMatch
        {
            Lights = lights.Words(), Darks = darks.Words(), Drift = lights.Drift, Verdict = MatchVerdict.CannotTell, Reason = "",
            TemperatureDifference = darks.Temperature - lights.Temperature,
        };
        if (Unknown(lights, darks) is { } unknown)
            return plain with { Reason = $"The {unknown} is not known: fill it in in the capture table." };
        bool same = DarkMatching.SameExposure(lights.Exposure, darks.Exposure) && Math.Abs(plain.TemperatureDifference!.Value) <= SameTemperature;
        if (reader is null || (reader.Best.Pixels is null && !same))
            return same ? plain with { Verdict = MatchVerdict.Fits, Reason = $"Same settings and exposure, and temperatures within {Said.Celsius(SameTemperature)}; without a profile the loss is not known." }
                : plain with { Reason = "Exposure or temperature differ, and no profile says what that costs: characterise this mode of the camera and give --profile." };
        if (Beyond(reader, lights, darks) is { } beyond) return plain with { Reason = beyond };
        LightMatch straight = Measured(reader, question, sky, lights, darks, stackLights, scaled: false, plain);
        if (question.BiasFrames < 1 || straight.Verdict == MatchVerdict.Fits) return straight;
        LightMatch scaled = Measured(reader, question, sky, lights, darks, stackLights, scaled: true, plain);
        return MatchVerdict.Rank(scaled.Verdict) < MatchVerdict.Rank(straight.Verdict) ? scaled : straight;
    }

    private static string? Unknown(SetSummary lights, SetSummary darks) =>
        lights.Exposure is null ? "exposure of the lights" : darks.Exposure is null ? "exposure of the darks"
        : lights.Temperature is null ? "temperature of the lights" : darks.Temperature is null ? "temperature of the darks" : null;

    private static string? Beyond(SensorReader reader, SetSummary lights, SetSummary darks)
    {
        try
        {
            _ = Guard.Exposure(reader, lights.Exposure!.Value).Count();
            _ = Guard.Temperature(reader, lights.Temperature!.Value, "temperature of the lights").Count();
            _ = Guard.Temperature(reader, darks.Temperature!.Value, "temperature of the darks").Count();
            return null;
        }
        catch (DecisionRefusedException refused) { return refused.Message; }
    }

    private static LightMatch Measured(SensorReader reader, MatchQuestion question, SkyRate sky, SetSummary lights, SetSummary darks, int stackLights, bool scaled, LightMatch plain)
    {
        var stack = new StackConditions
        {
            Sky = sky.Rate, ExposureSeconds = lights.Exposure!.Value, TemperatureCelsius = lights.Temperature!.Value, Lights = stackLights,
            DitherPositions = Math.Clamp(question.DitherPositions ?? 1, 1, stackLights), RejectsOutliers = question.RejectsOutliers,
        };
        var frames = new DarkFrames
        {
            ExposureSeconds = darks.Exposure!.Value, TemperatureCelsius = darks.Temperature!.Value, Frames = darks.Frames, Scaled = scaled, BiasFrames = question.BiasFrames,
        };
        double?[] Decide(SensorModel model, double s)
        {
            var mismatch = new DarkMismatch(model, stack, s, question.Limits);
            CauseLoads loads = mismatch.Loads(frames.TemperatureCelsius, frames.ExposureSeconds, scaled);
            return [mismatch.Loss(frames), loads.Typical, loads.HotPixels, loads.Glow, loads.Level];
        }
        double?[] best = Decide(reader.Best, sky.Rate.Value);
        Propagation.Spread[] spreads = Propagation.Through(reader, sky.Rate, Decide);
        string verdict = Verdict(best, question), low = Verdict([.. spreads.Select(s => s.Low)], question), high = Verdict([.. spreads.Select(s => s.High)], question);
        if (low == MatchVerdict.Fits && high == MatchVerdict.DoesNotFit) verdict = MatchVerdict.CannotTell;
        (string cause, string reason) = Cause(best, question, stack, frames, plain.TemperatureDifference!.Value);
        return plain with
        {
            Verdict = verdict,
            Loss = new Measurement(100 * best[0]!.Value, 100 * spreads[0].StandardDeviation, "%", Propagation.Draws, "rise of the noise of the stack by mismatch and number of darks, uncertainties drawn"),
            BindingCause = cause,
            FullPixels = FullPixels.Share(reader, sky.Rate.Value, stack.ExposureSeconds, stack.TemperatureCelsius),
            Scaled = scaled,
            Reason = (verdict, scaled) switch
            {
                (MatchVerdict.Fits, false) => $"Every limit is kept; closest to its limit: {reason}.",
                (MatchVerdict.Fits, true) => $"Every limit is kept once the darks are scaled; closest to its limit: {reason}.",
                (MatchVerdict.CannotTell, _) => $"The uncertainty of the profile spans fits and does not fit; largest: {reason}.",
                _ => $"Beyond the limit: {reason}. {Remedy(reader.Best, stack, question)}",
            },
        };
    }

    /// <summary>Loss, then the four loads.</summary>
    private static string Verdict(double?[] numbers, MatchQuestion question)
    {
        double loss = numbers[0] ?? 0, hot = numbers[2] ?? 0, other = Math.Max(numbers[3] ?? 0, numbers[4] ?? 0);
        if (loss <= question.Limits.NoiseLoss && (numbers[1] ?? 0) <= 1 && hot <= 1 && other <= 1) return MatchVerdict.Fits;
        return loss <= question.UsableLoss && hot <= UsableHotLoad && other <= UsableOtherLoad ? MatchVerdict.Usable : MatchVerdict.DoesNotFit;
    }

    private static (string Cause, string Reason) Cause(double?[] numbers, MatchQuestion question, StackConditions stack, DarkFrames darks, double difference)
    {
        int cause = Enumerable.Range(1, 4).MaxBy(i => numbers[i] ?? 0);
        string apart = $"darks {Said.Celsius(Math.Abs(difference))} {(difference < 0 ? "colder" : "warmer")}"
            + (DarkMatching.SameExposure(stack.ExposureSeconds, darks.ExposureSeconds) ? "" : $" and of {Said.Seconds(darks.ExposureSeconds)} instead of {Said.Seconds(stack.ExposureSeconds)}");
        if (numbers[0] > question.Limits.NoiseLoss && (numbers[cause] ?? 0) <= 1)
            return ("number-of-darks", $"{Said.Whole(darks.Frames)} darks for a stack of {Said.Whole(stack.Lights)} lights");
        string what = CauseLoads.Names[cause - 1] switch
        {
            "typical" => "the spread over typical pixels",
            "hot-pixels" => "hot pixels",
            "glow" => "the residual of the glow",
            _ => "the level residual",
        };
        return (CauseLoads.Names[cause - 1], $"{what} with {apart}, {Said.Percent(numbers[cause] ?? 0)} of the limit");
    }

    private static string Remedy(SensorModel sensor, StackConditions stack, MatchQuestion question)
    {
        double ratio = DarkCountAdvice.Ratio(sensor, stack.Sky.Value, stack.ExposureSeconds, stack.TemperatureCelsius);
        double n = DarkCount.Smallest(ratio, (double)stack.Lights / stack.DitherPositions, question.Limits.NoiseLoss);
        return $"To fit, take {Said.Whole((long)n)} darks of {Said.Seconds(stack.ExposureSeconds)} at {Said.Celsius(Math.Round(stack.TemperatureCelsius))}.";
    }
}
