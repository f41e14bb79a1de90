using SensorProfile.Fitting.Models;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// Weighted fit of one temperature law, on the linear scale: there the errors of a rate are normal even when it is
/// small or negative.
/// </summary>
/// <remarks>
/// Rates and the floor cannot be negative: if one is below zero at the unbounded minimum, the minimum with it held at
/// zero is taken.
/// </remarks>
internal static class LawFit
{
    /// <summary>Fits the law; null when the points do not determine it.</summary>
    /// <param name="law">The law.</param> <param name="temperatures">°C.</param> <param name="rates">e-/px/s.</param>
    /// <param name="uncertainties">Standard uncertainties of the rates, positive.</param>
    public static FittedLaw? Fit(TemperatureLaw law, double[] temperatures, double[] rates, double[] uncertainties)
    {
        if (temperatures.Length <= law.Count)
            return null;
        return law is ShapedLaw shaped
            ? FitShaped(shaped, temperatures, rates, uncertainties)
            : FitLinear(law, temperatures, rates, uncertainties);
    }

    private static FittedLaw? FitShaped(ShapedLaw law, double[] temperatures, double[] rates, double[] uncertainties)
    {
        if (Start(law, temperatures, rates, uncertainties) is not { } start)
            return null;
        NonlinearFit fit = LevenbergMarquardt.Fit(
            law.Rate,
            temperatures,
            rates,
            uncertainties,
            start,
            law.Gradient,
            mostIterations: 200
        );
        if (law.HasFloor && fit.Parameters[2] < 0)
            return HoldFloorAtZero(law, temperatures, rates, uncertainties);
        IReadOnlyList<double> shapes = law.TrialShapes;
        bool sensible =
            fit.Converged && fit.Parameters[0] > 0 && fit.Parameters[1] > shapes[0] && fit.Parameters[1] < shapes[^1];
        if (!sensible || !double.IsFinite(fit.Covariance[0, 0]))
            return null;
        double[] u = [.. Enumerable.Range(0, law.Count).Select(fit.Uncertainty)];
        return new FittedLaw(
            law,
            fit.Parameters,
            fit.Covariance,
            u,
            new bool[law.Count],
            fit.ChiSquared,
            fit.DegreesOfFreedom
        );
    }

    private static FittedLaw? HoldFloorAtZero(
        ShapedLaw law,
        double[] temperatures,
        double[] rates,
        double[] uncertainties
    )
    {
        TemperatureLaw plain = TemperatureLaw.Named(law.Name[..^"+floor".Length], law.ReferenceTemperature);
        if (Fit(plain, temperatures, rates, uncertainties) is not { } fit)
            return null;
        return Held(law, [.. fit.Parameters, 0], [false, false, true], fit.ChiSquared, temperatures, uncertainties);
    }

    // Covariance at given parameters, with parameters held at zero treated as free; only a floor held at zero is then
    // removed from the covariance of the others.
    private static FittedLaw? Held(
        TemperatureLaw law,
        double[] parameters,
        bool[] atBound,
        double chiSquared,
        double[] temperatures,
        double[] uncertainties
    )
    {
        double[,] all = Covariance(law, law.Count, parameters, temperatures, uncertainties);
        if (!double.IsFinite(all[0, 0]))
            return null;
        double[] u = [.. Enumerable.Range(0, law.Count).Select(j => Math.Sqrt(all[j, j]))];
        double[,] covariance = all;
        if (law.HasFloor && atBound[^1])
        {
            double[,] withoutFloor = Covariance(law, law.Count - 1, parameters, temperatures, uncertainties);
            covariance = new double[law.Count, law.Count];
            for (int i = 0; i < law.Count - 1; i++)
            for (int j = 0; j < law.Count - 1; j++)
                covariance[i, j] = withoutFloor[i, j];
        }
        return new FittedLaw(law, parameters, covariance, u, atBound, chiSquared, temperatures.Length - law.Count);
    }

    private static double[,] Covariance(
        TemperatureLaw law,
        int free,
        double[] parameters,
        double[] temperatures,
        double[] uncertainties
    )
    {
        var jacobian = new double[temperatures.Length, free];
        var gradient = new double[law.Count];
        for (int i = 0; i < temperatures.Length; i++)
        {
            law.Gradient(temperatures[i], parameters, gradient);
            for (int j = 0; j < free; j++)
                jacobian[i, j] = gradient[j] / uncertainties[i];
        }
        return HouseholderSolver.Covariance(jacobian, out _);
    }

    // Tries every subset of the amplitudes; with at most three, that is exact and quick.
    private static FittedLaw? FitLinear(
        TemperatureLaw law,
        double[] temperatures,
        double[] rates,
        double[] uncertainties
    )
    {
        double[][] columns = [.. Enumerable.Range(0, law.Count).Select(_ => new double[temperatures.Length])];
        var gradient = new double[law.Count];
        for (int i = 0; i < temperatures.Length; i++)
        {
            law.Gradient(temperatures[i], new double[law.Count], gradient);
            for (int j = 0; j < law.Count; j++)
                columns[j][i] = gradient[j];
        }
        (double[] Parameters, bool[] AtBound, double ChiSquared)? best = null;
        for (int subset = (1 << law.Count) - 1; subset > 0; subset--)
        {
            int[] free = [.. Enumerable.Range(0, law.Count).Where(j => (subset >> j & 1) == 1)];
            LinearFit fit = LinearLeastSquares.Fit([.. free.Select(j => columns[j])], rates, uncertainties);
            if (fit.Parameters.Any(p => p < 0) || fit.ChiSquared >= best?.ChiSquared)
                continue;
            var parameters = new double[law.Count];
            var atBound = Enumerable.Repeat(true, law.Count).ToArray();
            for (int j = 0; j < free.Length; j++)
                (parameters[free[j]], atBound[free[j]]) = (fit.Parameters[j], false);
            best = (parameters, atBound, fit.ChiSquared);
        }
        if (best is not { } found || law.Thermal(law.ReferenceTemperature, found.Parameters) <= 0)
            return null;
        return Held(law, found.Parameters, found.AtBound, found.ChiSquared, temperatures, uncertainties);
    }

    // For each trial shape, amplitude and floor follow from two linear equations; the fit starts from the best one, so
    // no start can be far off.
    private static double[]? Start(ShapedLaw law, double[] temperatures, double[] rates, double[] uncertainties)
    {
        double[]? best = null;
        double least = double.PositiveInfinity;
        foreach (double shape in law.TrialShapes)
        {
            double s00 = 0,
                s01 = 0,
                s11 = 0,
                y0 = 0,
                y1 = 0;
            for (int i = 0; i < rates.Length; i++)
            {
                double w = 1 / (uncertainties[i] * uncertainties[i]),
                    ratio = Math.Exp(law.Exponent(temperatures[i], shape));
                (s00, s01, s11) = (s00 + w * ratio * ratio, s01 + w * ratio, s11 + w);
                (y0, y1) = (y0 + w * ratio * rates[i], y1 + w * rates[i]);
            }
            double determinant = s00 * s11 - s01 * s01;
            double floor =
                law.HasFloor && determinant > 1e-12 * s00 * s11 ? Math.Max(0, (s00 * y1 - s01 * y0) / determinant) : 0;
            double amplitude = (y0 - floor * s01) / s00;
            if (!(amplitude > 0))
                continue;
            double[] trial = law.HasFloor ? [amplitude, shape, floor] : [amplitude, shape];
            double chiSquared = 0;
            for (int i = 0; i < rates.Length; i++)
                chiSquared += Math.Pow((rates[i] - law.Rate(temperatures[i], trial)) / uncertainties[i], 2);
            if (chiSquared < least)
                (least, best) = (chiSquared, trial);
        }
        return best;
    }
}
