namespace SensorProfile.DarkCurrent.Levels;

/// <summary>
/// Spread and skew of the dark rates of ordinary pixels relative to the typical rate: one shape for all temperatures of
/// a channel.
/// </summary>
/// <remarks>At the cold end the noise hides the spread; where visible, it is 5 to 20 % of the rate at any temperature,
/// so the temperatures are pooled by weight. If the noise hides the skew as well, that of a log-normal distribution is
/// assumed, third moment 3·s⁴ for a small relative spread s, with an uncertainty as large as itself.</remarks>
/// <param name="RelativeVariance">Variance of the rates over the square of the typical rate.</param>
/// <param name="RelativeThirdMoment">Third central moment of the rates over the cube of the typical rate.</param>
internal sealed record DarkRateShape(double RelativeVariance, double RelativeThirdMoment)
{
    // beyond this the expansion of the distribution function no longer rises everywhere
    private const double MaxSkew = 0.9;

    /// <summary>Pools the shape common to all temperatures.</summary>
    public static DarkRateShape Measure(IReadOnlyList<DarkDistribution> temperatures)
    {
        DarkDistribution[] bright = [.. temperatures.Where(d => d.Centre > 0)];
        double variance = Math.Max(
            0,
            Pooled(bright.Select(d => (d.Variance / Power(d, 2), d.VarianceUncertainty / Power(d, 2))))
        );
        double expected = 3 * variance * variance;
        double third =
            expected == 0
                ? 0
                : Pooled(
                    bright
                        .Select(d => (d.ThirdMoment / Power(d, 3), d.ThirdMomentUncertainty / Power(d, 3)))
                        .Append((expected, expected))
                );
        double most = MaxSkew * Math.Pow(variance, 1.5);
        return new(variance, Math.Clamp(third, -most, most));
    }

    private static double Power(DarkDistribution d, int power) => Math.Pow(d.Centre, power);

    private static double Pooled(IEnumerable<(double Value, double Uncertainty)> values)
    {
        double weights = 0,
            sum = 0;
        foreach ((double value, double uncertainty) in values)
        {
            double weight = 1 / (uncertainty * uncertainty);
            (weights, sum) = (weights + weight, sum + weight * value);
        }
        return weights > 0 ? sum / weights : 0;
    }
}
