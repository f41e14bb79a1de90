using MathNet.Numerics.RootFinding;
using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>A standard deviation common to all points, on top of their own uncertainties.</summary>
/// <param name="Size">The standard deviation; 0 when the points need none.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the estimate; 0 when there is none.</param>
internal readonly record struct Jitter(double Size, int DegreesOfFreedom)
{
    private const double Significance = 0.05;

    /// <summary>No jitter.</summary>
    public static Jitter None => new(0, 0);

    /// <summary>
    /// Estimated from points of equal x if these have at least two degrees of freedom, or about a polynomial if they do
    /// not explain the scatter there.
    /// </summary>
    public static Jitter Estimate(double[] x, double[] y, double[] u, int degree)
    {
        int about = x.Length - degree - 1;
        if (about < 1)
            return None;
        Jitter repeats = Within(x, y, u);
        bool explains =
            repeats.DegreesOfFreedom >= 2
            && Probability.ChiSquaredTail(Polynomial.Fit(x, y, repeats.AddedTo(u), degree).ChiSquared, about)
                >= Significance;
        return explains ? repeats : About(x, y, u, degree);
    }

    /// <summary>Estimated from points of equal x only.</summary>
    public static Jitter Within(double[] x, double[] y, double[] u)
    {
        int within = x.Length - x.Distinct().Count();
        return within < 1 ? None : new(Solve(size => WithinGroups(x, y, Added(u, size)), within, u), within);
    }

    /// <summary>Estimated from the scatter about a polynomial only.</summary>
    public static Jitter About(double[] x, double[] y, double[] u, int degree)
    {
        int about = x.Length - degree - 1;
        return about < 1
            ? None
            : new(Solve(size => Polynomial.Fit(x, y, Added(u, size), degree).ChiSquared, about, u), about);
    }

    /// <summary>√(u² + s²) of every point.</summary>
    public double[] AddedTo(double[] uncertainties) => Added(uncertainties, Size);

    /// <summary>
    /// Degrees of freedom of an uncertainty whose part beyond <paramref name="stated"/> comes from the jitter (Welch
    /// and Satterthwaite).
    /// </summary>
    public double EffectiveDegreesOfFreedom(double total, double stated)
    {
        double fromJitter = Math.Sqrt(Math.Max(0, total * total - stated * stated));
        return Size > 0
            ? ErrorPropagation.EffectiveDegreesOfFreedom(
                [stated, fromJitter],
                [double.PositiveInfinity, DegreesOfFreedom]
            )
            : double.PositiveInfinity;
    }

    /// <summary>
    /// The total, widened so that ±1.96 of it covers 95 % although the jitter is known from few points.
    /// </summary>
    public double Widen(double total, double stated) =>
        total * Probability.CoverageWidening(EffectiveDegreesOfFreedom(total, stated));

    private static double[] Added(double[] uncertainties, double size) =>
        [.. uncertainties.Select(v => Math.Sqrt(v * v + size * size))];

    private static double WithinGroups(double[] x, double[] y, double[] u)
    {
        double chiSquared = 0;
        foreach (int[] group in Enumerable.Range(0, x.Length).GroupBy(i => x[i]).Select(g => g.ToArray()))
            chiSquared += WeightedMean.Combine([.. group.Select(i => y[i])], [.. group.Select(i => u[i])]).ChiSquared;
        return chiSquared;
    }

    // χ² falls as the jitter grows; find the jitter at which it equals its degrees of freedom.
    private static double Solve(Func<double, double> chiSquared, int degreesOfFreedom, double[] u)
    {
        if (chiSquared(0) <= degreesOfFreedom)
            return 0;
        double low = 0,
            high = u.Max();
        while (chiSquared(high) > degreesOfFreedom && high < 1e9 * u.Max())
            (low, high) = (high, 2 * high);
        return Brent.FindRoot(size => chiSquared(size) - degreesOfFreedom, low, high, 1e-9 * high, 100);
    }
}
