using SensorProfile.Fitting.Models;
using SensorProfile.Fitting.Statistics;
using SensorProfile.Profiles.Response;

namespace SensorProfile.PhotonTransfer;

/// <summary>Conversion gain from flat pairs: the photon-transfer method.</summary>
/// <remarks>
/// σ²(μ) = σ²_dark + Kμ (EMVA Standard 1288, Release 4.0 Linear) and, with the leading term of the brighter-fatter
/// effect, σ² = σ²_dark + Kμ(1 + aμ) (Astier et al. 2019, A&amp;A 629, A36); gain = 1/K. The dark pairs are a point of
/// their own at μ = 0, so the fit weighs their uncertainty too. The weights come from the fitted variance, not the
/// observed one: otherwise a point that is low by chance would weigh more than one that is high, and the gain of a
/// small sensor would be biased by 2·(2/n). A curvature too small to detect still tilts a straight line by more than
/// its error. Unless the curved fit is decisively better, the gain therefore comes from the curved fit with one more
/// observation, "the curvature changes the variance at the top of the range by 0 ± 5 %". Precise data overrule it; with
/// few pixels it keeps the curvature from running away.
/// </remarks>
internal static class GainFit
{
    /// <summary>The curved fit is taken when its corrected Akaike criterion is lower by more than this.</summary>
    public const double DecisiveDifference = 6;

    private const double CurvatureAllowance = 0.05;
    private const double RangeShare = 0.7;
    private const double SameLevel = 0.05;

    // share of pixels at the top code: these have no noise left, as when a bright centre saturates before the rest
    private const double MaxFull = 0.002;
    private const int Reweightings = 4;

    /// <param name="points">One channel's pairs.</param>
    /// <param name="darkVariance">Temporal variance without light, ADU².</param>
    /// <param name="darkUncertainty">Its standard uncertainty, ADU².</param>
    /// <param name="saturationAdu">Saturation above the pedestal, ADU; null if not reached.</param>
    /// <returns>
    /// Null when no pair is brighter than the darks, or when the variance does not grow with the light.
    /// </returns>
    public static GainFitResult? Fit(
        IReadOnlyList<FlatPairPoint> points,
        double darkVariance,
        double darkUncertainty,
        double? saturationAdu
    )
    {
        double limit = saturationAdu is { } saturation ? RangeShare * saturation : double.PositiveInfinity;
        double stuck = points.Count == 0 ? 0 : points.Min(p => p.TopCodeShare);
        bool[] used =
        [
            .. points.Select(p =>
                p.Signal > 0
                && p.TopCodeShare <= stuck + MaxFull
                && p.MeanSignal <= limit
                && p.Variance > darkVariance
                && p.Pixels > 1
            ),
        ];
        FlatPairPoint[] flats = [.. points.Where((_, i) => used[i])];
        if (flats.Length == 0)
            return null;

        double scale = flats.Max(p => p.Signal);
        int levels = CountLevels(flats);
        LinearFit straight = Weighted(flats, darkVariance, darkUncertainty, scale, degree: 1);
        LinearFit? curved = levels >= 4 ? Weighted(flats, darkVariance, darkUncertainty, scale, degree: 2) : null;
        // Also with few levels: a curvature that cannot be seen may still be there.
        LinearFit allowed = Weighted(flats, darkVariance, darkUncertainty, scale, degree: 2, CurvatureAllowance);
        Measurement gainStraight = Gain(
            straight,
            scale,
            "photon transfer, straight line through dark and flat pairs (EMVA 1288)"
        );
        Measurement? gainCurved = curved is null
            ? null
            : Gain(curved, scale, "photon transfer with brighter-fatter curvature (Astier et al. 2019)");
        double?[] criteria =
        [
            Criterion(straight, flats.Length + 1, 2),
            curved is null ? null : Criterion(curved, flats.Length + 1, 3),
        ];
        if (!IsGain(gainStraight))
            return null;
        bool takeCurved =
            criteria[0] is { } s && criteria[1] is { } c && s - c > DecisiveDifference && IsGain(gainCurved);
        Measurement gain = takeCurved
            ? gainCurved!
            : Gain(
                allowed,
                scale,
                "photon transfer, straight line through dark and flat pairs (EMVA 1288), with an uncertainty "
                    + "for up to 5 % of undetected curvature"
            );
        if (!IsGain(gain))
            return null;
        LinearFit selected = takeCurved ? curved! : straight;

        return new GainFitResult
        {
            Gain = gain,
            Slope = new(
                selected.Parameters[1] / scale,
                Widened(selected) * selected.Uncertainty(1) / scale,
                "ADU/e-",
                flats.Length,
                "weighted fit of variance against signal"
            ),
            Intercept = InterceptCheck(flats, darkVariance, darkUncertainty, scale, levels),
            Curvature = curved is null ? null : Curvature(curved, scale),
            GainStraight = gainStraight,
            GainCurved = gainCurved,
            Selected = takeCurved ? GainForm.Curved : GainForm.Straight,
            FitLimit = scale,
            Used = used,
            Levels = levels,
            ChiSquared = selected.ChiSquared,
            DegreesOfFreedom = selected.DegreesOfFreedom,
        };
    }

    private static LinearFit Weighted(
        FlatPairPoint[] flats,
        double darkVariance,
        double darkUncertainty,
        double scale,
        int degree,
        double? curvatureAllowance = null
    )
    {
        double[] x = [0, .. flats.Select(p => p.Signal / scale)];
        double[] y = [darkVariance, .. flats.Select(p => p.Variance)];
        double[] expected = [.. y];
        LinearFit fit = null!;
        for (int i = 0; i < Reweightings; i++)
        {
            double[] u = [darkUncertainty, .. flats.Select((p, k) => StandardError(expected[k + 1], p.Pixels))];
            double rise = i > 0 && fit.Parameters[1] > 0 ? fit.Parameters[1] : y.Max() - darkVariance;
            fit = curvatureAllowance is { } allowance
                ? WithAllowance(x, y, u, allowance * rise)
                : Polynomial.Fit(x, y, u, degree);
            for (int k = 1; k < x.Length; k++)
            {
                double model = Polynomial.At(fit.Parameters, x[k]);
                expected[k] = model > darkVariance / 2 ? model : y[k];
            }
        }
        return fit;
    }

    // c₀ + c₁x + c₂x² with the additional observation c₂ = 0 ± allowance.
    private static LinearFit WithAllowance(double[] x, double[] y, double[] u, double allowance) =>
        LinearLeastSquares.Fit(
            [
                [.. x.Select(_ => 1.0), 0],
                [.. x, 0],
                [.. x.Select(v => v * v), 1],
            ],
            [.. y, 0],
            [.. u, allowance]
        );

    /// <summary>Standard error of a variance of n pixels with nearly normal noise: σ²√(2/(n − 1)).</summary>
    public static double StandardError(double variance, long pixels) =>
        variance * Math.Sqrt(2.0 / Math.Max(1, pixels - 1));

    private static Measurement Gain(LinearFit fit, double scale, string method)
    {
        double slope = fit.Parameters[1] / scale,
            uncertainty = Widened(fit) * fit.Uncertainty(1) / scale;
        return new(
            1 / slope,
            uncertainty / (slope * slope),
            "e-/ADU",
            fit.DegreesOfFreedom + fit.Parameters.Length,
            method
        );
    }

    /// <summary>
    /// Factor on the uncertainties: 1 when the points scatter as their errors predict; the Birge factor with Student's
    /// widening when chance (p &lt; 1 %) no longer explains the scatter.
    /// </summary>
    private static double Widened(LinearFit fit) =>
        fit.Probability > 0.01
            ? 1
            : Math.Sqrt(fit.ReducedChiSquared) * Probability.CoverageWidening(fit.DegreesOfFreedom);

    private static double? Criterion(LinearFit fit, int points, int parameters) =>
        InformationCriterion.Corrected(fit.ChiSquared, points, parameters);

    private static Measurement? InterceptCheck(
        FlatPairPoint[] flats,
        double darkVariance,
        double darkUncertainty,
        double scale,
        int levels
    )
    {
        if (levels < 3)
            return null;
        double[] x = [.. flats.Select(p => p.Signal / scale)],
            y = [.. flats.Select(p => p.Variance)],
            u = [.. flats.Select(p => StandardError(p.Variance, p.Pixels))];
        LinearFit line = Polynomial.Fit(x, y, u, 1);
        double uncertainty = Math.Sqrt(Square(Widened(line) * line.Uncertainty(0)) + Square(darkUncertainty));
        return new(
            line.Parameters[0] - darkVariance,
            uncertainty,
            "ADU²",
            flats.Length,
            "line through the flat pairs alone, less the dark variance"
        );
    }

    private static Measurement Curvature(LinearFit fit, double scale)
    {
        double slope = fit.Parameters[1],
            a = fit.Parameters[2] / slope;
        double variance =
            (fit.Covariance[2, 2] - 2 * a * fit.Covariance[1, 2] + a * a * fit.Covariance[1, 1]) / (slope * slope);
        return new(
            a / scale,
            Widened(fit) * Math.Sqrt(Math.Max(0, variance)) / scale,
            "1/ADU",
            fit.DegreesOfFreedom + 3,
            "leading term of the brighter-fatter effect"
        );
    }

    private static bool IsGain(Measurement? gain) =>
        gain is { Value: > 0, StandardUncertainty: >= 0 }
        && double.IsFinite(gain.Value)
        && double.IsFinite(gain.StandardUncertainty);

    private static int CountLevels(FlatPairPoint[] flats)
    {
        int levels = 0;
        double last = double.NegativeInfinity;
        foreach (double signal in flats.Select(p => p.Signal).Order())
        {
            if (signal <= last * (1 + SameLevel))
                continue;
            levels++;
            last = signal;
        }
        return levels;
    }

    private static double Square(double x) => x * x;
}
