using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>The noise of a stack for one camera, or one random draw of it.</summary>
/// <param name="Typical">The typical pixel in one calibrated light, e-².</param>
/// <param name="TypicalStack">The typical pixel in the stack, e-².</param>
/// <param name="GlowVariance">What the glow adds to one light at its peak, e-².</param>
/// <param name="ResidualSpread">Standard deviation over all pixels of the dark residual, before dithering, e-; null
/// without a distribution.</param>
/// <param name="AllPixels">Mean over pixels of the variance in the stack, residual included, e-²; null without a
/// distribution.</param>
internal sealed record StackNoise(
    PixelNoise Typical,
    double TypicalStack,
    double GlowVariance,
    double? ResidualSpread,
    double? AllPixels
)
{
    internal static StackNoise Compute(SensorModel sensor, StackConditions stack, double sky, DarkFrames? darks)
    {
        double light = sensor.Law.RateAt(stack.TemperatureCelsius) * stack.ExposureSeconds;
        double dark = darks is null ? 0 : sensor.Law.RateAt(darks.TemperatureCelsius) * darks.ExposureSeconds;
        PixelNoise typical = OfPixel(sensor, stack, sky, light, dark, darks);
        double glow = sensor.Glow?.ElectronsAt(stack.TemperatureCelsius, stack.ExposureSeconds, sensor) ?? 0;
        (double? spread, double? all) = AllOf(sensor, stack, sky, darks);
        return new StackNoise(typical, typical.Stack(stack), glow, spread, all);
    }

    /// <summary>One pixel in one calibrated light.</summary>
    internal static PixelNoise OfPixel(
        SensorModel sensor,
        StackConditions stack,
        double sky,
        double light,
        double dark,
        DarkFrames? darks
    )
    {
        double skyElectrons = sky * stack.ExposureSeconds;
        return darks is null
            ? PixelNoise.OfLight(sensor, skyElectrons, Math.Max(light, 0))
            : PixelNoise.Calibrated(
                sensor,
                skyElectrons,
                Math.Max(light, 0),
                Math.Max(dark, 0),
                darks,
                Scale(sensor, stack, darks)
            );
    }

    private static double Scale(SensorModel sensor, StackConditions stack, DarkFrames darks) =>
        !darks.Scaled
            ? 1
            : sensor.Law.RateAt(stack.TemperatureCelsius)
                * stack.ExposureSeconds
                / (sensor.Law.RateAt(darks.TemperatureCelsius) * darks.ExposureSeconds);

    private static (double? Spread, double? All) AllOf(
        SensorModel sensor,
        StackConditions stack,
        double sky,
        DarkFrames? darks
    )
    {
        if (sensor.Pixels is null)
            return (null, null);
        var residual = new DarkResidual(
            sensor,
            stack,
            sky,
            darks?.TemperatureCelsius ?? stack.TemperatureCelsius,
            darks?.ExposureSeconds ?? stack.ExposureSeconds,
            darks?.Scaled ?? false
        );
        ResidualPattern pattern = darks is null ? default : residual.Pattern(withHotPixels: true);
        double dithered = pattern.Dithered(stack.DitherPositions),
            variance = 0;
        for (int i = 0; i < sensor.Pixels.Weights.Length; i++)
        {
            PixelNoise noise = residual.Noise(i, darks);
            (double random, double left) = residual.Reaching(i, noise.Random);
            variance +=
                sensor.Pixels.Weights[i]
                * (residual.ClipCost * random / stack.Lights + left * left * noise.Common / stack.DitherPositions);
        }
        double scale = darks is null ? 1 : Scale(sensor, stack, darks);
        variance += sensor.Flicker.Sum(f =>
            FlickerNoise.Share(f, sensor) * FlickerNoise.OfStack(f, sensor, stack, darks, scale)
        );
        double shared = stack.CostOfShared(residual.ClipCost);
        return (pattern.Spread, variance + shared * dithered * dithered + residual.PairsOfOutliers());
    }
}
