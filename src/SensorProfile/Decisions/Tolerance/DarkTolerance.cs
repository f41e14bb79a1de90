using SensorProfile.Decisions.Settling;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.Tolerance;

/// <summary>How far darks may differ from lights in °C and in seconds, and what sets that limit.</summary>
public static class DarkTolerance
{
    private const double CannotTellRelative = 0.5; // a limit known to no better than half of itself is no advice

    /// <summary>
    /// How closely a cooler holds its temperature from night to night, °C: tighter limits are no advice.
    /// </summary>
    internal const double CoolerHolds = 0.2;

    /// <summary>Dither positions used for the comparison, and fewest lights it is made for.</summary>
    private const int ComparedPositions = 20,
        MinCompared = 5;

    /// <summary>Dither positions with which an undithered stack is compared; null for too few lights.</summary>
    internal static int? PositionsBeside(int lights) =>
        lights < MinCompared ? null : Math.Min(ComparedPositions, lights);

    /// <summary>
    /// As <see cref="Find"/>; when the question does not say whether the stack is dithered, also for the same stack
    /// dithered over 20 positions, outliers clipped.
    /// </summary>
    /// <inheritdoc cref="Find"/>
    public static ToleranceAnswer FindBoth(CameraProfile profile, ModeProfile mode, ToleranceQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        ToleranceAnswer still = Find(profile, mode, question);
        if (question.DitherPositions is not null || PositionsBeside(question.Lights) is not int positions)
            return still;
        ToleranceAnswer dithered = Find(
            profile,
            mode,
            question with
            {
                Sky = still.Sky,
                DitherPositions = positions,
                Rejection = Rejection.SigmaClip,
            }
        );
        return still with { Dithered = dithered };
    }

    /// <summary>Answers for the given sky, or for three named skies side by side.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="question">The stack.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or the profile cannot answer it.</exception>
    public static ToleranceAnswer Find(CameraProfile profile, ModeProfile mode, ToleranceQuestion question)
    {
        question.Limits.Check();
        ToleranceAnswer Under(SkyRate sky) =>
            StrictestColour.Ask(
                mode,
                colour => Solve(profile, SensorReader.Of(profile, colour), question, sky),
                Nearest,
                QuantityNames.ToleranceWarmer
            );
        if (question.Sky is { } given)
            return Under(given);
        var reader = SensorReader.Of(profile, mode);
        ToleranceAnswer[] answers = [.. FullPixels.Skies(reader, null, question.ExposureSeconds).Select(Under)];
        ToleranceAnswer strictest = answers.MinBy(Nearest)!;
        return strictest with
        {
            OtherSkies = [.. answers.Where(a => !ReferenceEquals(a, strictest))],
            Findings = [.. strictest.Findings, .. FullPixels.LeftOut(reader, null, question.ExposureSeconds)],
        };
    }

    /// <summary>The nearer of both temperature limits, °C; infinite where nothing limits.</summary>
    private static double Nearest(ToleranceAnswer answer) =>
        SideLimits.Smaller(
            answer.Quantities[QuantityNames.ToleranceWarmer]?.Value,
            answer.Quantities[QuantityNames.ToleranceColder]?.Value
        ) ?? double.PositiveInfinity;

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
        if (FullPixels.White(reader, sky, stack.ExposureSeconds, stack.TemperatureCelsius) is { } white)
            throw white;
        if (question.TemperatureCelsius is null)
            findings.Add(
                new Finding(
                    FindingCodes.TemperatureAssumed,
                    Severity.Note,
                    "No temperature of the lights was given; the profile's reference temperature of "
                        + $"{Plain.Celsius(stack.TemperatureCelsius)} is used."
                )
            );
        findings.AddRange(FullPixels.Findings(reader, sky.Rate.Value, stack.ExposureSeconds, stack.TemperatureCelsius));
        bool known = reader.Best.Pixels is not null;
        if (!known)
            findings.Add(
                MissingInputs.Distribution("the spread over pixels and the hot pixels cannot limit this answer")
            );
        if (question.Limits.HotShare * reader.Camera.Width * reader.Camera.Height < 1)
            findings.Add(
                new Finding(
                    FindingCodes.HotShareBelowOnePixel,
                    Severity.Warning,
                    "The accepted share of hot pixels is less than one pixel of this sensor: take a larger share."
                )
            );

        var mismatch = new DarkMismatch(reader.Best, stack, sky.Rate.Value, question.Limits);
        MismatchLimits best = MismatchLimits.Find(mismatch, question.Scaled);
        var expected = new ExpectedLimits(best, mismatch, question.Scaled);
        MismatchSpreads spreads = MismatchLimits.Spreads(
            UncertaintyDraws.Through(reader, sky.Rate, (model, s) => Decide(model, stack, s, question, expected).Row())
        );
        SideLimits all = best.All;
        var quantities = new AnswerQuantities();
        string method = "smallest of four causes, uncertainties drawn";
        quantities.Add(QuantityNames.ToleranceWarmer, all.Warmer, "°C", method, spreads.All.Warmer);
        quantities.Add(QuantityNames.ToleranceColder, all.Colder, "°C", method, spreads.All.Colder);
        quantities.Add(QuantityNames.ToleranceExposure, all.Exposure, "s", method, spreads.All.Exposure);
        CauseTolerance[] causes =
        [
            .. CauseLoads.Mismatches.Select(cause =>
                Cause(
                    cause,
                    best.Of(cause),
                    spreads.ByCause[cause],
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
            : ToleranceSettling.Search(profile, reader, question, sky, stack, best, CannotTellRelative);
        return new ToleranceAnswer
        {
            Sky = sky,
            Stack = stack,
            Limits = question.Limits,
            Verdict = uncertain ? ToleranceVerdict.CannotTell : ToleranceVerdict.Answered,
            SpreadKnown = known,
            Settled = settling?.Outcome,
            Settling = settling?.Frames ?? [],
            BindingCause = best.Binding,
            BeyondCoolers = !uncertain && tighter < CoolerHolds,
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
        ExpectedLimits near
    ) => MismatchLimits.Find(new DarkMismatch(sensor, stack, sky, question.Limits), question.Scaled, near);

    private static CauseTolerance Cause(BindingCause cause, SideLimits best, SideSpreads spreads, bool known)
    {
        static Measurement? Of(double? value, UncertaintyDraws.Spread spread, string unit) =>
            value is double known
                ? new Measurement(known, spread.StandardDeviation, unit, UncertaintyDraws.Draws, "uncertainties drawn")
                : null;
        return new CauseTolerance(
            cause,
            Of(best.Warmer, spreads.Warmer, "°C"),
            Of(best.Colder, spreads.Colder, "°C"),
            Of(best.Exposure, spreads.Exposure, "s"),
            known
        );
    }

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
                    FindingCodes.ToleranceExtrapolated,
                    Severity.Warning,
                    $"The limit lies more than {Plain.Whole((long)Refuse.ExtrapolationCelsius)} °C outside the "
                        + $"measured range of {Plain.Celsius(reader.Range.Low)} to {Plain.Celsius(reader.Range.High)}; "
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
}
