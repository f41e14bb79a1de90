using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>
/// How much warmer the sensor was in a later session at the same temperature reading, from its hot pixels.
/// </summary>
/// <remarks>Median of δ = ΔT₂·log₂(rate now / rate then), with each pixel's own doubling temperature ΔT₂.</remarks>
/// <param name="Celsius">δ, °C.</param>
/// <param name="OwnError">Standard error of δ from the scatter of the pixels, °C.</param>
/// <param name="Pixels">Number of hot pixels used.</param>
internal sealed record HotPixelStep(double Celsius, double OwnError, int Pixels)
{
    /// <summary>Relative uncertainty of one session's doubling temperatures.</summary>
    public const double DoublingDoubt = 0.02;

    private const int MinHot = 10;
    private const double SurelyHot = 10;

    /// <summary>The step of the first session against itself: zero.</summary>
    public static HotPixelStep None { get; } = new(0, 0, 0);

    /// <summary>Measures the step; null with too few hot pixels.</summary>
    /// <param name="match">Matched hot pixels.</param>
    /// <param name="before">The first session; supplies the doubling temperature of each rate class.</param>
    /// <param name="typical">Doubling temperature of the typical pixel, °C.</param>
    /// <param name="doublingOf">Doubling temperature of a pixel from the maps, °C; NaN when unknown.</param>
    public static HotPixelStep? Measure(
        HotPixelMatch match,
        ModeProfile before,
        double typical,
        Func<int, double> doublingOf
    )
    {
        List<double> steps = [];
        foreach (int i in match.SurelyHotInBoth(SurelyHot))
        {
            (Measurement from, Measurement to) = match.Excess(i);
            double doubling = doublingOf(i);
            if (!(doubling is > 1 and < 40))
                doubling = OfClass(before, from.Value) ?? typical;
            steps.Add(doubling * Math.Log2(to.Value / from.Value));
        }
        if (steps.Count < MinHot)
            return null;
        double[] all = [.. steps];
        double own = OrderStatistics.MedianToMeanError * OrderStatistics.MadSigma(all) / Math.Sqrt(all.Length);
        return new HotPixelStep(OrderStatistics.Median(all), own, all.Length);
    }

    /// <summary>Doubling temperature of the rate class that contains a rate, °C; null without classes.</summary>
    public static double? OfClass(ModeProfile mode, double rate) =>
        mode.FixedPattern?.DoublingByRate.FirstOrDefault(c => rate >= c.RateFrom && rate < c.RateTo)?.Doubling.Value;
}
