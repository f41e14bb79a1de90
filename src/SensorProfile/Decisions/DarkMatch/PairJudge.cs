using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.Settling;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>Judges dark sets for one light set.</summary>
/// <param name="profile">The camera; null when there is none.</param>
/// <param name="reader">The mode of the lights; null when the profile does not hold it.</param>
/// <param name="question">The limits.</param>
/// <param name="sky">The sky.</param>
/// <param name="stackLights">Lights in the stack that this set is part of.</param>
internal sealed class PairJudge(
    CameraProfile? profile,
    SensorReader? reader,
    MatchQuestion question,
    SkyRate sky,
    int stackLights
)
{
    internal const double SameTemperature = 0.5; // frames this close are pooled as one set anyway, °C
    private const double UsableHotLoad = 10,
        UsableOtherLoad = 2; // times their limits

    internal static LightMatch Plain(SetSummary lights, SetSummary darks) =>
        new(new MatchReason(MatchGround.Measured))
        {
            Lights = lights.Facts(),
            Darks = darks.Facts(),
            Drift = lights.Drift,
            SetPoint = lights.SetPoint,
            Verdict = MatchVerdict.CannotTell,
            TemperatureDifference = darks.Temperature - lights.Temperature,
        };

    internal LightMatch Judge(SetSummary lights, SetSummary darks)
    {
        LightMatch plain = Plain(lights, darks);
        if (Unknown(lights, darks) is { } unknown)
            return Instead(lights, plain with { Reason = new MatchReason(MatchGround.NotKnown) { Unknown = unknown } });
        bool same =
            DarkMatching.SameExposure(lights.Exposure, darks.Exposure)
            && Math.Abs(plain.TemperatureDifference!.Value) <= SameTemperature;
        if (reader is null || (reader.Best.Pixels is null && !same))
            return same
                ? plain with
                {
                    Verdict = MatchVerdict.Fits,
                    Reason = new MatchReason(MatchGround.AlikeWithoutProfile),
                }
                : PairSettling.NoProfile(plain, reader, lights, darks);
        if (Beyond(reader, lights, darks) is { } beyond)
            return PairSettling.OutOfReach(plain, reader, beyond, lights, darks);
        if (FullPixels.White(reader, sky, lights.Exposure!.Value, lights.Temperature!.Value) is { } white)
            return plain with { Reason = new MatchReason(MatchGround.White) { Refusal = white.ToFinding() } };
        LightMatch straight = Measured(lights, darks, scaled: false, plain);
        if (question.BiasFrames < 1 || straight.Verdict == MatchVerdict.Fits)
            return straight;
        LightMatch scaled = Measured(lights, darks, scaled: true, plain);
        return scaled.Verdict < straight.Verdict ? scaled : straight;
    }

    private LightMatch Instead(SetSummary lights, LightMatch plain) =>
        FreshDarks(lights) is { } fresh ? plain with { Settling = [fresh] } : plain;

    /// <summary>
    /// Darks like the lights, as many as the stack wants: they fit whatever else is unknown. Null when that cannot be
    /// computed.
    /// </summary>
    private SettlingFrames? FreshDarks(SetSummary lights) =>
        reader is null || lights.Exposure is not double seconds || lights.Temperature is not double celsius
            ? null
            : SettlingFrames.Of(
                FrameKind.Dark,
                seconds,
                Math.Round(celsius),
                Needed(Stack(question, sky, lights, stackLights))
            );

    private static UnknownOfPair? Unknown(SetSummary lights, SetSummary darks) =>
        lights.Exposure is null ? UnknownOfPair.LightExposure
        : darks.Exposure is null ? UnknownOfPair.DarkExposure
        : lights.Temperature is null ? UnknownOfPair.LightTemperature
        : darks.Temperature is null ? UnknownOfPair.DarkTemperature
        : null;

    internal static Finding? Beyond(SensorReader reader, SetSummary lights, SetSummary darks)
    {
        try
        {
            _ = Guard.Exposure(reader, lights.Exposure!.Value).Count();
            _ = Guard.Temperature(reader, lights.Temperature!.Value, "temperature of the lights").Count();
            _ = Guard.Temperature(reader, darks.Temperature!.Value, "temperature of the darks").Count();
            return null;
        }
        catch (DecisionRefusedException refused)
        {
            return refused.ToFinding();
        }
    }

    internal static StackConditions Stack(MatchQuestion question, SkyRate sky, SetSummary lights, int stackLights) =>
        (
            question.Stack with
            {
                ExposureSeconds = lights.Exposure!.Value,
                Lights = stackLights,
                DitherPositions = Math.Clamp(question.Stack.Positions, 1, stackLights),
            }
        ).At(lights.Temperature!.Value, sky);

    private LightMatch Measured(SetSummary lights, SetSummary darks, bool scaled, LightMatch plain)
    {
        StackConditions stack = Stack(question, sky, lights, stackLights);
        var frames = new DarkFrames
        {
            ExposureSeconds = darks.Exposure!.Value,
            TemperatureCelsius = darks.Temperature!.Value,
            Frames = darks.Frames,
            Scaled = scaled,
            BiasFrames = question.BiasFrames,
        };
        PairLoads Decide(SensorModel model, double s)
        {
            var mismatch = new DarkMismatch(model, stack, s, question.Stack.Limits);
            return new PairLoads(
                mismatch.Loss(frames),
                mismatch.Loads(frames.TemperatureCelsius, frames.ExposureSeconds, scaled)
            );
        }
        bool Told(UncertaintyDraws.Spread[] of) =>
            Verdict(PairLoads.FromRow([.. of.Select(s => s.Low)])) != MatchVerdict.Fits
            || Verdict(PairLoads.FromRow([.. of.Select(s => s.High)])) != MatchVerdict.DoesNotFit;
        PairLoads best = Decide(reader!.Best, sky.Rate.Value);
        UncertaintyDraws.Spread[] spreads = UncertaintyDraws.Through(reader, sky.Rate, (model, s) =>
            Decide(model, s).Row()
        );
        bool told = Told(spreads);
        MatchVerdict verdict = told ? Verdict(best) : MatchVerdict.CannotTell;
        SettlingSearch? settling = told
            ? null
            : SettlingSearch.Find(profile!, reader, sky, left =>
                Told(UncertaintyDraws.Through(reader, sky.Rate, (model, s) => Decide(model, s).Row(), left))
            );
        BindingCause cause =
            best.Loss > question.Stack.Limits.NoiseLoss && best.Mismatch.Largest <= 1
                ? BindingCause.NumberOfDarks
                : best.Mismatch.Binding;
        return plain with
        {
            Verdict = verdict,
            Loss = new Measurement(
                100 * best.Loss,
                100 * spreads[0].StandardDeviation,
                "%",
                UncertaintyDraws.Draws,
                "rise of the noise of the stack by mismatch and number of darks, uncertainties drawn"
            ),
            BindingCause = cause,
            FullPixels = FullPixels.Share(reader, sky.Rate.Value, stack.ExposureSeconds, stack.TemperatureCelsius),
            Scaled = scaled,
            Settling = settling?.Frames ?? [],
            Reason = new MatchReason(MatchGround.Measured)
            {
                Limit = new LimitUse(cause, best.Mismatch.Largest, stack.Lights, Needed(stack)),
                Settled = settling?.Outcome,
            },
        };
    }

    private int Needed(StackConditions stack)
    {
        double ratio = DarkCountAdvice.Ratio(
            reader!.Best,
            stack.Sky.Value,
            stack.ExposureSeconds,
            stack.TemperatureCelsius
        );
        return (int)
            MinDarks.InMaster(ratio, (double)stack.Lights / stack.DitherPositions, question.Stack.Limits.NoiseLoss);
    }

    private MatchVerdict Verdict(PairLoads loads)
    {
        double hot = loads.Mismatch.HotPixels ?? 0,
            other = Math.Max(loads.Mismatch.Glow, loads.Mismatch.Level);
        if (loads.Loss <= question.Stack.Limits.NoiseLoss && loads.Mismatch.Largest <= 1)
            return MatchVerdict.Fits;
        return loads.Loss <= question.UsableLoss && hot <= UsableHotLoad && other <= UsableOtherLoad
            ? MatchVerdict.Usable
            : MatchVerdict.DoesNotFit;
    }
}

/// <summary>What a pair is judged by.</summary>
/// <param name="Loss">Rise of the noise of the stack by mismatch and number of darks, as a share.</param>
/// <param name="Mismatch">Use of the limits.</param>
internal sealed record PairLoads(double Loss, CauseLoads Mismatch)
{
    internal double?[] Row() => [Loss, Mismatch.Typical, Mismatch.HotPixels, Mismatch.Glow, Mismatch.Level];

    /// <summary>The loads from such a row; what is not known counts as 0.</summary>
    internal static PairLoads FromRow(double?[] row) =>
        new(row[0] ?? 0, new CauseLoads(row[1], row[2], row[3] ?? 0, row[4] ?? 0));
}
