using MathNet.Numerics;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift;

/// <summary>Tests of "has it changed?".</summary>
internal static class DriftTest
{
    private const double PowerQuantile = 0.8416212335729143; // Φ⁻¹(0.80)

    /// <summary>z = (x₂ − x₁)/√(u₁² + u₂²), for values measured independently of each other.</summary>
    public static double Z(Measurement from, Measurement to)
    {
        double change = to.Value - from.Value,
            joint = Joint(from, to);
        return change == 0 ? 0 : change / joint;
    }

    /// <summary>√(u₁² + u₂²).</summary>
    public static double Joint(Measurement from, Measurement to) =>
        double.Hypot(from.StandardUncertainty, to.StandardUncertainty);

    /// <summary>
    /// Two-sided exact test that two counts have the same mean: given their sum, either is binomial with ½
    /// (Przyborowski and Wilenski 1940, Biometrika 31, 313).
    /// </summary>
    public static double CountsP(long first, long second)
    {
        long sum = first + second,
            larger = Math.Max(first, second);
        return sum == 0 || first == second
            ? 1
            : Math.Min(1, 2 * SpecialFunctions.BetaRegularized(larger, sum - larger + 1, 0.5));
    }

    /// <summary>The z that belongs to a two-sided p, with the sign of the change.</summary>
    public static double ZOf(double p, double sign) =>
        p >= 1 || sign == 0 ? 0 : Math.Sign(sign) * -Probability.NormalQuantile(Math.Max(p, 1e-300) / 2);

    /// <summary>
    /// Change found with a probability of 80 % when m tests share the significance: (Φ⁻¹(1 − α/2m) + Φ⁻¹(0.8))·u.
    /// </summary>
    public static double Detectable(double jointUncertainty, double significance, int tests) =>
        (Probability.NormalQuantile(1 - significance / (2 * Math.Max(1, tests))) + PowerQuantile) * jointUncertainty;
}
