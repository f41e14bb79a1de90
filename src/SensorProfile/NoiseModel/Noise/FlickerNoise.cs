using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>What pixels that jump between levels (random telegraph signal) add to the noise.</summary>
/// <remarks>
/// A pixel whose level scatters by d has the variance d² in one frame when its step is made at read-out. A thermal step
/// is integrated: with d in e-/px/s and a correlation time τ, (d·g·t)²·h(t/τ), h(y) = 2(y − 1 + e^−y)/y², g the growth
/// of the typical pixel's dark current. Frames Δ apart have the correlation c·e^(−Δ/τ), c = 1 at read-out and 2(cosh y
/// − 1)/(y²·h) for a thermal step, so that the mean of n frames has the variance V/n·A, A = 1 + 2c·Σ_j (1 − j/n)·ρ^j, ρ
/// = e^(−Δ/τ): V/n for short dwells, V for long ones, when the state is common to the whole stack. Lights follow one
/// another without a pause and cycle through the dither positions, so a sensor pixel returns to a place after k
/// exposures; the master's error is common to all lights and falls with k alone; lights and darks are from different
/// nights.
/// Where τ is not known, frames are taken as independent, and a thermal step keeps its state through one exposure.
/// Outlier rejection is not allowed for: with it the term is an upper bound.
/// </remarks>
internal static class FlickerNoise
{
    /// <summary>Variance of one pixel of a class in one light, e-².</summary>
    internal static double OfLight(FlickerClass pixels, double growth, double exposureSeconds)
    {
        double scatter = pixels.Deviation.Value;
        if (!pixels.Thermal)
            return scatter * scatter;
        return Math.Pow(scatter * growth * exposureSeconds, 2)
            * (pixels.MemorySeconds is { } memory ? Averaged(exposureSeconds / memory) : 1);
    }

    /// <summary>Variance of one pixel of a class in the mean of n frames, e-².</summary>
    internal static double OfMean(
        FlickerClass pixels,
        double growth,
        double exposureSeconds,
        double frames,
        double interval
    )
    {
        double one = OfLight(pixels, growth, exposureSeconds);
        if (pixels.MemorySeconds is not { } memory || frames <= 1)
            return one / frames;
        double y = exposureSeconds / memory,
            rho = Math.Exp(-interval / memory);
        double shared =
            !pixels.Thermal || y < 1e-3 ? 1
            : y > 300 ? 0
            : 2 * (Math.Cosh(y) - 1) / (y * y * Averaged(y));
        // Σ (1 − j/n) ρ^j
        double sum =
            rho > 1 - 1e-9
                ? (frames - 1) / 2
                : rho / (1 - rho) - rho * (1 - Math.Pow(rho, frames)) / (frames * (1 - rho) * (1 - rho));
        return one / frames * (1 + 2 * shared * sum);
    }

    /// <summary>Variance of a class in the stack, e-².</summary>
    internal static double OfStack(
        FlickerClass pixels,
        SensorModel sensor,
        StackConditions stack,
        DarkFrames? darks,
        double scale
    )
    {
        double visits = (double)stack.Lights / stack.DitherPositions;
        double lights = OfMean(
            pixels,
            sensor.GrowthAt(stack.TemperatureCelsius, stack.ExposureSeconds).Thermal,
            stack.ExposureSeconds,
            visits,
            stack.DitherPositions * stack.ExposureSeconds
        );
        double master = darks is null
            ? 0
            : scale
                * scale
                * OfMean(
                    pixels,
                    sensor.GrowthAt(darks.TemperatureCelsius, darks.ExposureSeconds).Thermal,
                    darks.ExposureSeconds,
                    darks.Frames,
                    darks.ExposureSeconds
                );
        return (lights + master) / stack.DitherPositions;
    }

    /// <summary>Share of all pixels in a class.</summary>
    internal static double Share(FlickerClass pixels, SensorModel sensor) => pixels.Pixels / sensor.PixelCount;

    private static double Averaged(double y) => y < 1e-3 ? 1 - y / 3 : 2 * (y - 1 + Math.Exp(-y)) / (y * y);
}
