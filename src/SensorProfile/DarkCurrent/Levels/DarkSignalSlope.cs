using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>Dark signal against exposure at one temperature, from its level or its variance.</summary>
/// <remarks>Level μ(t) = μ₀ + K·I·t; variance σ²(t) = σ₀² + K²·I·t (EMVA Standard 1288, dark current from mean and from
/// variance). A pedestal that jumps from frame to frame adds the same variance s² to every level; s is estimated from
/// the scatter of equal exposures or, when there are none or they do not explain it, from the scatter about the line
/// (after Mandel and Paule 1970, Anal. Chem. 42, 1194). When frames of one exposure agree with each other far better
/// than the exposures agree with a line, whole sets are offset, and each set counts as one point
/// (<see cref="SetOffsets"/>).</remarks>
internal static class DarkSignalSlope
{
    /// <summary>Fits the line.</summary>
    /// <param name="points">One point per frame, pair or set: exposure in s, level (or variance), its standard
    /// uncertainty.</param>
    /// <param name="unit">Unit of the level: "ADU", "e-" or, for variances, "ADU²".</param>
    /// <param name="pedestalJitters">Whether frames may differ by more than the stated uncertainties; false for
    /// variances, which the pedestal does not affect.</param>
    /// <returns>Null with fewer than two different exposures.</returns>
    /// <remarks>Points that cannot be weighted (not finite, or without an uncertainty because the pixels never change)
    /// are left out.</remarks>
    public static DarkSignalFit? Fit(
        IReadOnlyList<(double ExposureSeconds, double Level, double Uncertainty)> points,
        string unit = "ADU",
        bool pedestalJitters = true
    )
    {
        (double ExposureSeconds, double Level, double Uncertainty)[] sorted =
        [
            .. points.Where(IsWeighable).OrderBy(p => p.ExposureSeconds).ThenBy(p => p.Level),
        ];
        double[] t = [.. sorted.Select(p => p.ExposureSeconds)],
            y = [.. sorted.Select(p => p.Level)],
            u = [.. sorted.Select(p => p.Uncertainty)];
        if (t.Distinct().Count() < 2)
            return null;
        StraightLine stated = StraightLine.Fit(t, y, u);
        Jitter jitter = pedestalJitters ? Jitter.Estimate(t, y, u, degree: 1) : Jitter.None;
        StraightLine line = jitter.Size > 0 ? StraightLine.Fit(t, y, jitter.AddedTo(u)) : stated;
        string method =
            jitter.Size > 0 ? "weighted straight line, pedestal jitter estimated" : "weighted straight line";
        var fit = new DarkSignalFit
        {
            Slope = new Measurement(
                line.Slope,
                jitter.Widen(line.SlopeUncertainty, stated.SlopeUncertainty),
                unit + "/s",
                t.Length,
                method
            ),
            Intercept = new Measurement(
                line.Intercept,
                jitter.Widen(line.InterceptUncertainty, stated.InterceptUncertainty),
                unit,
                t.Length,
                method
            ),
            PedestalJitter = jitter.Size,
            ChiSquared = stated.ChiSquared,
            DegreesOfFreedom = stated.DegreesOfFreedom,
        };
        if (pedestalJitters && SetOffsets.Fit(t, y, u, unit) is { } bySets)
            fit = fit with { Slope = bySets.Slope, Intercept = bySets.Intercept };
        return WithCurvature(fit, t, y, u, unit, pedestalJitters);
    }

    private static bool IsWeighable((double ExposureSeconds, double Level, double Uncertainty) point) =>
        double.IsFinite(point.ExposureSeconds)
        && double.IsFinite(point.Level)
        && double.IsFinite(point.Uncertainty)
        && point.Uncertainty > 0;

    private static DarkSignalFit WithCurvature(
        DarkSignalFit fit,
        double[] t,
        double[] y,
        double[] u,
        string unit,
        bool pedestalJitters
    )
    {
        if (t.Distinct().Count() < 3 || (pedestalJitters && t.Length < 4))
            return fit;
        double span = t[^1] - t[0],
            middle = (t[^1] + t[0]) / 2;
        // −1 … 1: well conditioned whatever the exposures
        double[] x = [.. t.Select(v => 2 * (v - middle) / span)];
        // Here the jitter is estimated about the parabola, so that a real curvature does not hide in it.
        Jitter jitter = pedestalJitters ? Jitter.Estimate(x, y, u, degree: 2) : Jitter.None;
        double stated = Polynomial.Fit(x, y, u, 2).Uncertainty(2);
        LinearFit parabola = Polynomial.Fit(x, y, jitter.AddedTo(u), 2);
        double term = parabola.Parameters[2],
            uncertainty = parabola.Uncertainty(2),
            freedom = jitter.EffectiveDegreesOfFreedom(uncertainty, stated);
        double scale = 4 / (span * span),
            rise = Math.Abs(fit.Slope.Value) * span;
        return fit with
        {
            Curvature = new Measurement(
                term * scale,
                jitter.Widen(uncertainty, stated) * scale,
                unit + "/s²",
                t.Length,
                "quadratic term of a weighted parabola"
            ),
            CurvatureProbability = Probability.StudentTwoSided(term / uncertainty, freedom),
            // a parabola departs from its chord by c·(span/2)² at most
            CurvatureShare = rise > 0 ? Math.Abs(term) / rise : 0,
        };
    }
}
