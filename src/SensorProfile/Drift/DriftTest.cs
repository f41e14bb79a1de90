using MathNet.Numerics;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift;

/// <summary>Significance tests for "has it changed?".</summary>
internal static class DriftTest
{
    private const double PowerQuantile = 0.8416212335729143; // Φ⁻¹(0.80)
    private const int RatioNodes = 2001;

    /// <summary>z = (x₂ − x₁)/√(u₁² + u₂²), for independent measurements.</summary>
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
    /// Two-sided exact test that two counts have the same mean: given their sum, either is binomial with p = ½
    /// (Przyborowski and Wilenski 1940, Biometrika 31, 313).
    /// </summary>
    /// <remarks>
    /// Where the expected means differ by a known ratio ρ (the sensor was warmer), the second count is binomial with
    /// p = ρ/(1 + ρ); where ρ is uncertain, the tail is averaged over its lognormal distribution, in equal steps of
    /// probability.
    /// </remarks>
    /// <param name="first">Count in the earlier profile.</param>
    /// <param name="second">Count in the later profile.</param>
    /// <param name="ratio">ρ, later over earlier.</param>
    /// <param name="doubt">Standard uncertainty of ln ρ.</param>
    public static double CountsP(long first, long second, double ratio = 1, double doubt = 0)
    {
        if (first + second == 0)
            return 1;
        if (!(doubt > 0))
            return Math.Min(1, 2 * Math.Min(AtLeast(first, second, ratio), AtLeast(second, first, 1 / ratio)));
        double up = 0,
            down = 0;
        for (int i = 0; i < RatioNodes; i++)
        {
            double r = ratio * Math.Exp(doubt * Probability.NormalQuantile((i + 0.5) / RatioNodes));
            up += AtLeast(first, second, r) / RatioNodes;
            down += AtLeast(second, first, 1 / r) / RatioNodes;
        }
        return Math.Min(1, 2 * Math.Min(up, down));
    }

    /// <summary>P(K ≥ counted), K binomial with n = the sum of both counts and p = ρ/(1 + ρ).</summary>
    private static double AtLeast(long other, long counted, double ratio) =>
        counted == 0 ? 1 : SpecialFunctions.BetaRegularized(counted, other + 1, ratio / (1 + ratio));

    /// <summary>The z of a two-sided p, with the sign of the change.</summary>
    public static double ZOf(double p, double sign) =>
        p >= 1 || sign == 0 ? 0 : Math.Sign(sign) * -Probability.NormalQuantile(Math.Max(p, 1e-300) / 2);

    /// <summary>
    /// Smallest change found with 80 % probability when m tests share the significance α: (Φ⁻¹(1 − α/2m) + Φ⁻¹(0.8))·u.
    /// </summary>
    public static double Detectable(double jointUncertainty, double significance, int tests) =>
        (Probability.NormalQuantile(1 - significance / (2 * Math.Max(1, tests))) + PowerQuantile) * jointUncertainty;
}
