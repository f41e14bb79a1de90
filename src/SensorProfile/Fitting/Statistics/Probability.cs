using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace SensorProfile.Fitting.Statistics;

/// <summary>Quantiles and tails of the distributions needed for intervals and tests.</summary>
internal static class Probability
{
    private const double SeveralDegreesOfFreedom = 30,
        ManyDegreesOfFreedom = 200_000;

    /// <summary>Half-width of the central 95 % of a normal distribution, in standard deviations.</summary>
    public const double Normal95 = 1.959963984540054;

    /// <summary>z with P(Z ≤ z) = 95 %, for limits that are one-sided.</summary>
    public const double OneSided95 = 1.6448536269514722;

    /// <summary>z with P(Z ≤ z) = p.</summary>
    public static double NormalQuantile(double p) => Normal.InvCDF(0, 1, p);

    /// <summary>P(|Z| ≥ |z|).</summary>
    public static double NormalTwoSided(double z) => SpecialFunctions.Erfc(Math.Abs(z) / Math.Sqrt(2));

    /// <summary>P(Z ≥ z).</summary>
    public static double NormalTail(double z) => 0.5 * SpecialFunctions.Erfc(z / Math.Sqrt(2));

    /// <summary>t with P(T ≤ t) = p; the normal quantile for infinite degrees of freedom.</summary>
    public static double StudentQuantile(double p, double degreesOfFreedom)
    {
        if (degreesOfFreedom > 1e8)
            return NormalQuantile(p);
        if (p == 0.5)
            return 0;
        double tail = Math.Min(p, 1 - p);
        double t = Polish(
            StudentT.InvCDF(0, 1, degreesOfFreedom, 1 - tail),
            t => tail - StudentTwoSided(t, degreesOfFreedom) / 2,
            t => StudentT.PDF(0, 1, degreesOfFreedom, t)
        );
        return p < 0.5 ? -t : t;
    }

    /// <summary>P(|T| ≥ |t|).</summary>
    public static double StudentTwoSided(double t, double degreesOfFreedom) =>
        degreesOfFreedom > 1e8
            ? NormalTwoSided(t)
            : SpecialFunctions.BetaRegularized(
                degreesOfFreedom / 2,
                0.5,
                degreesOfFreedom / (degreesOfFreedom + t * t)
            );

    /// <summary>x with P(χ² ≤ x) = p.</summary>
    /// <remarks>From tens of thousands of degrees of freedom, the library's inverse sometimes leaves its search range
    /// and throws. ν·(1 − 2/(9ν) + z·√(2/(9ν)))³ (Wilson and Hilferty 1931, PNAS 17, 684) is off by less than 0.002
    /// standard deviations for ν ≥ 30, where Newton steps give full digits, and by less than 10⁻⁶ for ν ≥ 200 000,
    /// where it is used as it is.</remarks>
    public static double ChiSquaredQuantile(double p, double degreesOfFreedom)
    {
        double part = 2 / (9 * degreesOfFreedom);
        double start =
            degreesOfFreedom < SeveralDegreesOfFreedom
                ? ChiSquared.InvCDF(degreesOfFreedom, p)
                : degreesOfFreedom * Math.Pow(1 - part + NormalQuantile(p) * Math.Sqrt(part), 3);
        return degreesOfFreedom > ManyDegreesOfFreedom
            ? start
            : Polish(start, x => ChiSquared.CDF(degreesOfFreedom, x) - p, x => ChiSquared.PDF(degreesOfFreedom, x));
    }

    /// <summary>P(χ² ≥ x); 1 without degrees of freedom, because nothing can disagree.</summary>
    public static double ChiSquaredTail(double x, double degreesOfFreedom)
    {
        if (degreesOfFreedom <= 0 || x <= 0)
            return 1;
        return double.IsPositiveInfinity(x) ? 0 : SpecialFunctions.GammaUpperRegularized(degreesOfFreedom / 2, x / 2);
    }

    /// <summary>P(N ≤ n) for Poisson counts with a mean of μ > 0: Q(n + 1, μ).</summary>
    public static double PoissonAtMost(long count, double mean) =>
        SpecialFunctions.GammaUpperRegularized(count + 1, mean);

    /// <summary>
    /// Factor that widens a standard uncertainty with few degrees of freedom so that ±1.96 of it still covers 95 %:
    /// t₀.₉₇₅(ν)/1.96.
    /// </summary>
    public static double CoverageWidening(double degreesOfFreedom) =>
        degreesOfFreedom < 1e8 ? StudentQuantile(0.975, Math.Max(1, degreesOfFreedom)) / Normal95 : 1;

    // The library's inverses stop at about 1e-8; two Newton steps give full digits.
    private static double Polish(double x, Func<double, double> excess, Func<double, double> density)
    {
        for (int i = 0; i < 3; i++)
        {
            double slope = density(x),
                step = excess(x) / slope;
            if (!double.IsFinite(step))
                return x;
            x -= step;
        }
        return x;
    }
}
