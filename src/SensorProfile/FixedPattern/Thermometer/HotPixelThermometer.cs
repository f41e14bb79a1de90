using SensorProfile.Fitting.Models;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.Thermometer;

/// <summary>Temperature differences between dark frames from the common brightness of the hot pixels.</summary>
/// <remarks>
/// ΔT = ln s·ΔT₂/ln 2, s the brightness of a frame (<see cref="HotPixelBrightness"/>), ΔT₂ the doubling temperature of
/// these pixels at this temperature. Its uncertainty combines that of the brightness and the relative uncertainty of
/// ΔT₂, which is common to all frames. This is a relative thermometer: it cannot see what all frames share (an offset
/// of the probe at every temperature).
/// </remarks>
internal sealed class HotPixelThermometer
{
    // °C, uncertainty of the doubling temperature when no pixel has a measured law
    private const double AssumedDoubt = 1.0;

    // laws of single pixels needed before their mean replaces the assumption
    private const int MinLaws = 5;

    private readonly PatternInput input;
    private readonly ThermometerPixels pixels;
    private readonly double doubling,
        doublingDoubt;

    private HotPixelThermometer(PatternInput input, ThermometerPixels pixels, double doubling, double doublingDoubt) =>
        (this.input, this.pixels, this.doubling, this.doublingDoubt) = (input, pixels, doubling, doublingDoubt);

    /// <summary>Makes the thermometer; null with too few hot pixels.</summary>
    public static HotPixelThermometer? Calibrate(PatternInput input, RateMaps maps, DefectMap defects)
    {
        if (ThermometerPixels.Choose(input, maps, defects) is not { } pixels)
            return null;
        (double value, double doubt) = (PhysicalConstants.AssumedDoubling, AssumedDoubt);
        int[] measured = maps.Doubling is null ? [] : [.. pixels.Indices.Where(i => Half.IsFinite(maps.Doubling[i]))];
        if (measured.Length >= MinLaws)
        {
            // The logarithmic slope of the sum is the mean of the pixel slopes weighted by signal.
            double light = measured.Sum(i => (double)maps.Rate[i]),
                slope = measured.Sum(i => maps.Rate[i] / (double)maps.Doubling![i]) / light;
            double spread = Math.Sqrt(
                measured.Sum(i => maps.Rate[i] * Math.Pow(1 / (double)maps.Doubling![i] - slope, 2)) / light
            );
            // A few bright pixels dominate a weighted mean: Σ(light²)/(Σ light)² replaces 1/number.
            double share = measured.Sum(i => Math.Pow(maps.Rate[i] / light, 2));
            (value, doubt) = (1 / slope, spread / (slope * slope) * Math.Sqrt(share / (1 - share)));
        }
        return new(input, pixels, value, doubt);
    }

    /// <summary>
    /// Relative uncertainty of the doubling temperature, and so the relative uncertainty common to all temperature
    /// differences.
    /// </summary>
    public double RelativeDoubt => doublingDoubt / doubling;

    /// <summary>
    /// Temperatures of the sets of one temperature, relative to the mean of the longest exposure, °C.
    /// </summary>
    /// <returns>In the order of the exposures; null when the hot pixels of the longest set have too little
    /// signal.</returns>
    public IReadOnlyList<ThermometerSet>? Temperatures(DarkSeries series)
    {
        double[][][] signals =
        [
            .. series.Exposures.Select(e =>
                e.Frames.AsParallel()
                    .AsOrdered()
                    .WithDegreeOfParallelism(input.Walk.Threads)
                    .WithCancellation(input.Walk.Cancellation)
                    .Select(pixels.Signals)
                    .ToArray()
            ),
        ];
        double readVariance = Math.Max(input.UnlitVariance, 1.0 / 12) * Math.Pow(input.Gains.Average(), 2);
        (double[], double)? unlit = input.Unlit is { } map
            ? (pixels.Signals(map.Mean), readVariance / map.Frames)
            : null;
        if (HotPixelBrightness.Measure(series, signals, readVariance, unlit) is not { } brightness)
            return null;
        double toDegrees = doubling * Ratio(series.TemperatureCelsius) / Math.Log(2);
        return [.. signals.Select((frames, g) => Set(brightness, g, frames.Length, toDegrees))];
    }

    private ThermometerSet Set(HotPixelBrightness brightness, int set, int frames, double toDegrees)
    {
        double shared = brightness.SharedVariance(set);
        double Doubt(double celsius, double variance, double scale) =>
            Math.Sqrt(variance * Math.Pow(toDegrees / Math.Max(scale, 1e-3), 2) + Math.Pow(celsius * RelativeDoubt, 2));
        (double Scale, double OwnVariance)[] found =
        [
            .. Enumerable.Range(0, frames).Select(f => brightness.Frame(set, f)),
        ];
        double[] celsius = [.. found.Select(f => f.Scale > 0 ? Math.Log(f.Scale) * toDegrees : double.NaN)];
        double mean = set == brightness.Longest ? 0 : celsius.Average(),
            averaged = found.Average(f => f.OwnVariance) / frames;
        return new(
            [
                .. found.Select(
                    (f, k) =>
                        new Measurement(
                            celsius[k],
                            Doubt(celsius[k], f.OwnVariance + shared, f.Scale),
                            "°C",
                            pixels.Count,
                            "common brightness of the hot pixels"
                        )
                ),
            ],
            [.. found.Select(f => Math.Sqrt(f.OwnVariance) * toDegrees / Math.Max(f.Scale, 1e-3))],
            new(
                mean,
                set == brightness.Longest ? 0 : Doubt(mean, averaged + shared, found.Average(f => f.Scale)),
                "°C",
                frames,
                "common brightness of the hot pixels, mean of the frames"
            )
        );
    }

    /// <summary>
    /// Doubling temperature at a temperature over that at the reference, from the shape of the typical law, or of an
    /// Arrhenius law if there is none.
    /// </summary>
    private double Ratio(double celsius)
    {
        double reference = input.ReferenceTemperature;
        if (input.ActivationLaw is not { } law)
            return Math.Pow((celsius + PhysicalConstants.ZeroCelsius) / (reference + PhysicalConstants.ZeroCelsius), 2);
        double Slope(double t) => Math.Log(law(t + 0.05) / law(t - 0.05));
        return Slope(reference) / Slope(celsius);
    }
}
