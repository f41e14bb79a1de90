using SensorProfile.Fitting.Models;
using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>How the rates at all temperatures are scaled to the reference and combined.</summary>
/// <param name="Typical">Rate at the median of the maps at the reference temperature, e-/px/s: that of the typical
/// pixel plus what noise adds to a median; 0 when not resolved.</param>
/// <param name="Factors">Typical rate at the reference over that at each temperature.</param>
/// <param name="Weights">Share of each temperature in the rate of an ordinary pixel; the shares add up to 1.</param>
/// <param name="Nearest">Index of the temperature closest to the reference.</param>
/// <param name="Noise">Uncertainty of the combined rate of a typical pixel, e-/px/s.</param>
/// <param name="Spread">Robust spread of the pixel rates at the closest temperature, scaled to the reference, noise
/// included, e-/px/s.</param>
internal sealed record ReferenceScale(
    double Typical,
    double[] Factors,
    double[] Weights,
    int Nearest,
    double Noise,
    double Spread
)
{
    /// <summary>
    /// Relative deviation of the activation of ordinary pixels from the typical one that is allowed for.
    /// </summary>
    public const double LawSpread = 0.1;

    /// <summary>
    /// Weights are inverse variances; each variance is the noise scaled to the reference plus the error for a pixel of
    /// different activation, (0.1·ln factor·spread)².
    /// </summary>
    public static ReferenceScale Measure(
        PatternInput input,
        IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures
    )
    {
        double reference = input.ReferenceTemperature;
        double Law(double t) =>
            input.TypicalLaw is { } law ? law(t) : Math.Pow(2, (t - reference) / PhysicalConstants.AssumedDoubling);
        double[] factors = [.. temperatures.Select(t => Law(reference) / Law(t.Series.TemperatureCelsius))];
        int nearest = Enumerable
            .Range(0, factors.Length)
            .MinBy(i => Math.Abs(temperatures[i].Series.TemperatureCelsius - reference));
        double typical = input.TypicalAtReference?.Value ?? temperatures[nearest].Series.TypicalRate * factors[nearest];
        double spread = temperatures[nearest].Levels.Spread * factors[nearest];
        double[] noise = [.. temperatures.Select((t, i) => t.Levels.Noise * factors[i])];
        double[] weights =
        [
            .. noise.Select(
                (u, i) => 1 / (u * u + Math.Pow(LawSpread * Math.Log(factors[i]) * Math.Max(typical, spread), 2))
            ),
        ];
        double sum = weights.Sum();
        weights = [.. weights.Select(w => w / sum)];
        // The maps set the median of their noisy pixels to this value.
        typical += temperatures.Select((t, i) => weights[i] * factors[i] * t.Levels.MedianShift).Sum();
        return new(
            typical,
            factors,
            weights,
            nearest,
            Math.Sqrt(noise.Zip(weights, (u, w) => u * u * w * w).Sum()),
            spread
        );
    }
}
