using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;

namespace SensorProfile.Decisions.Tolerance;

/// <summary>Darks of another temperature or exposure, judged for a stack: the four limits of dark matching.</summary>
/// <remarks>
/// 1 typical: spread over pixels that are not hot, /√k, against √((1+p)²−1) of the stack's noise. 2 hot pixels: share
/// of places of the stack whose residual exceeds 3 times the stack's noise, against s. 3 glow: residual at the peak
/// against half the stack's noise. 4 level: mean residual times the fall-off of the flat against half the stack's
/// noise; with a scale of L px both against f/L of it, f times the noise averaged over L² px
/// (<see cref="LossLimits.SmoothLimit"/>). The stack's noise is what is new in each light, N/√M. Pixels that are full
/// in the lights leave minus the sky whatever dark is subtracted: that is not a mismatch, and is reported separately
/// (<see cref="FullPixels"/>).
/// </remarks>
/// <param name="sensor">The camera.</param>
/// <param name="stack">The lights.</param>
/// <param name="sky">Sky, e-/px/s.</param>
/// <param name="limits">The thresholds.</param>
internal sealed class DarkMismatch(SensorModel sensor, StackConditions stack, double sky, LossLimits limits)
{
    private const double FarthestWarm = 80,
        FarthestCold = 120; // °C; beyond these no dark is taken
    private const double FarthestExposure = 20; // times the light's own

    private readonly LightClasses light = new(sensor, stack, sky);
    private (double Share, double Level)? full; // what full pixels leave beside darks of the lights' own conditions

    /// <summary>Load of one cause at one mismatch.</summary>
    internal double? Load(BindingCause cause, double darkCelsius, double darkExposure, bool scaled)
    {
        if (sensor.Pixels is null && (cause is BindingCause.Typical or BindingCause.HotPixels))
            return null;
        var residual = new DarkResidual(sensor, light, darkCelsius, darkExposure, scaled);
        double noise = residual.StackNoise;
        return cause switch
        {
            BindingCause.Typical => residual.Pattern(withHotPixels: false).Dithered(stack.DitherPositions)
                / (limits.SpreadFactor * noise),
            BindingCause.HotPixels => Math.Max(residual.ShareBeyond(limits.HotFactor * noise) - Full(noise).Share, 0)
                / limits.HotShare,
            BindingCause.Glow => Math.Abs(residual.GlowPeak()) / (limits.SmoothLimit * noise),
            BindingCause.Level => limits.FlatFallOff
                * Math.Abs(residual.Level() - Full(noise).Level)
                / (limits.SmoothLimit * noise),
            _ => null,
        };
    }

    private (double Share, double Level) Full(double noise)
    {
        if (full is { } known)
            return known;
        if (!light.Full.Contains(true))
            return (full = (0, 0)).Value;
        var alike = new DarkResidual(sensor, light, stack.TemperatureCelsius, stack.ExposureSeconds, scaled: false);
        return (full = (alike.ShareBeyond(limits.HotFactor * noise), alike.Level())).Value;
    }

    internal CauseLoads Loads(double darkCelsius, double darkExposure, bool scaled) =>
        new(
            Load(BindingCause.Typical, darkCelsius, darkExposure, scaled),
            Load(BindingCause.HotPixels, darkCelsius, darkExposure, scaled),
            Load(BindingCause.Glow, darkCelsius, darkExposure, scaled)!.Value,
            Load(BindingCause.Level, darkCelsius, darkExposure, scaled)!.Value
        );

    /// <summary>Whether the stack rejects outliers, and the camera's pixels are known.</summary>
    internal bool RejectsOutliers => light.Clip is not null;

    /// <summary>Load of one cause for darks this much warmer, °C; 0 where it is not known.</summary>
    internal double LoadWarmer(BindingCause cause, double celsius, bool scaled) =>
        Load(cause, stack.TemperatureCelsius + celsius, stack.ExposureSeconds, scaled) ?? 0;

    /// <summary>Load of one cause for darks this much longer, s; 0 where it is not known.</summary>
    internal double LoadLonger(BindingCause cause, double seconds, bool scaled) =>
        Load(cause, stack.TemperatureCelsius, Math.Max(stack.ExposureSeconds + seconds, 1e-9), scaled) ?? 0;

    /// <summary>
    /// How much warmer than the lights the darks may be for one cause, °C; null when unlimited or unknown. The search
    /// starts at <paramref name="near"/>, where the answer is expected.
    /// </summary>
    internal double? Warmer(BindingCause cause, bool scaled, LimitCrossing.Expected? near = null) =>
        LimitCrossing.FirstAboveOne(d => LoadWarmer(cause, d, scaled), FarthestWarm, near);

    /// <summary>How much colder, °C; null when unlimited or unknown.</summary>
    internal double? Colder(BindingCause cause, bool scaled, LimitCrossing.Expected? near = null) =>
        LimitCrossing.FirstAboveOne(d => LoadWarmer(cause, -d, scaled), FarthestCold, near);

    /// <summary>How many seconds longer the darks may be; null when unlimited or unknown.</summary>
    internal double? Longer(BindingCause cause, bool scaled, LimitCrossing.Expected? near = null) =>
        LimitCrossing.FirstAboveOne(d => LoadLonger(cause, d, scaled), FarthestExposure * stack.ExposureSeconds, near);

    /// <summary>How many seconds shorter they may be; null when unlimited or unknown.</summary>
    internal double? Shorter(BindingCause cause, bool scaled, LimitCrossing.Expected? near = null) =>
        LimitCrossing.FirstAboveOne(d => LoadLonger(cause, -d, scaled), stack.ExposureSeconds, near);

    /// <summary>Rise of the stack's noise, as a share, from the mismatch and the number of darks.</summary>
    internal double Loss(DarkFrames darks)
    {
        StackNoise with = StackNoise.Compute(sensor, stack, sky, darks);
        var residual = new DarkResidual(sensor, light, darks.TemperatureCelsius, darks.ExposureSeconds, darks.Scaled);
        double spread = sensor.Pixels is null
            ? 0
            : residual.Pattern(withHotPixels: false).Dithered(stack.DitherPositions);
        double stackVariance = residual.TypicalNoise.Random / stack.Lights;
        return Math.Sqrt(1 + (with.Typical.Common / stack.DitherPositions + spread * spread) / stackVariance) - 1;
    }
}
