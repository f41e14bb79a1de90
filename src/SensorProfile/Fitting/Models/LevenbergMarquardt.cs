namespace SensorProfile.Fitting.Models;

/// <summary>Weighted nonlinear least squares by damped Gauss–Newton steps.</summary>
/// <remarks>Each step solves min ‖r − Jδ‖² + λ‖Dδ‖² by orthogonal factorisation, with D the column lengths of J,
/// allowed to fall only slowly (Moré 1978, Lecture Notes in Mathematics 630, 105), and λ controlled by the ratio of
/// actual to predicted gain (Nielsen 1999, IMM-REP-1999-05). The minimiser of the numerics library forms JᵀJ and loses
/// half of the digits on the harder NIST sets, hence this one.</remarks>
internal sealed class LevenbergMarquardt
{
    private readonly ModelValue model;
    private readonly ModelGradient gradient;
    private readonly double[] x,
        y,
        u;
    private readonly int points,
        count;

    private LevenbergMarquardt(ModelValue model, ModelGradient? gradient, double[] x, double[] y, double[] u, int count)
    {
        (this.model, this.x, this.y, this.u, this.count) = (model, x, y, u, count);
        this.gradient = gradient ?? CentralDifferences;
        points = x.Length;
    }

    /// <summary>Fits the model from the given start.</summary>
    /// <param name="model">f(x; p).</param> <param name="x">Abscissae.</param> <param name="y">Observed values.</param>
    /// <param name="uncertainties">Standard uncertainties of y; empty for an unweighted fit.</param>
    /// <param name="start">Starting parameters.</param>
    /// <param name="gradient">∂f/∂p; central differences when null.</param>
    /// <param name="mostIterations">Steps tried before giving up.</param>
    /// <exception cref="ArgumentException">Lengths differ, fewer points than parameters, an uncertainty is not
    /// positive, or the model is not finite at the start.</exception>
    public static NonlinearFit Fit(
        ModelValue model,
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> uncertainties,
        ReadOnlySpan<double> start,
        ModelGradient? gradient = null,
        int mostIterations = 20000
    )
    {
        if (x.Length != y.Length || (!uncertainties.IsEmpty && uncertainties.Length != y.Length))
            throw new ArgumentException("Points and uncertainties differ in number.", nameof(x));
        if (x.Length < start.Length)
            throw new ArgumentException($"{x.Length} points cannot determine {start.Length} parameters.", nameof(x));
        double[] u = uncertainties.IsEmpty ? [.. Enumerable.Repeat(1.0, x.Length)] : uncertainties.ToArray();
        if (u.Any(v => !(v > 0)))
            throw new ArgumentException("Every uncertainty must be positive.", nameof(uncertainties));
        return new LevenbergMarquardt(model, gradient, x.ToArray(), y.ToArray(), u, start.Length).Run(
            start.ToArray(),
            mostIterations
        );
    }

    private NonlinearFit Run(double[] parameters, int mostIterations)
    {
        double[] residual = Residual(parameters);
        double chiSquared = Square(residual),
            damping = 1e-3,
            growth = 2;
        if (!double.IsFinite(chiSquared))
            throw new ArgumentException("The model is not finite at the starting parameters.", nameof(parameters));
        double[,] jacobian = Jacobian(parameters);
        var scale = new double[count];
        bool converged = false;
        int iteration = 0;
        for (; iteration < mostIterations && !converged; iteration++)
        {
            Rescale(scale, jacobian);
            double[] step = HouseholderSolver.Damped(
                jacobian,
                residual,
                scale,
                Math.Sqrt(damping),
                out double predicted
            );
            double[] trial = [.. parameters.Zip(step, (p, s) => p + s)];
            double[] trialResidual = Residual(trial);
            double trialChiSquared = Square(trialResidual);
            // A gain below rounding is noise: take the step if it is negligible, and stop.
            converged =
                predicted <= 1e-15 * chiSquared
                || parameters.Zip(step, (p, s) => Math.Abs(s) <= 1e-14 * Math.Abs(p)).All(b => b);
            double gain = (chiSquared - trialChiSquared) / predicted;
            if (double.IsFinite(trialChiSquared) && gain > 1e-4)
            {
                (parameters, residual, chiSquared) = (trial, trialResidual, trialChiSquared);
                jacobian = Jacobian(parameters);
                damping = Math.Max(1e-30, damping * Math.Max(1.0 / 3, 1 - Math.Pow(2 * gain - 1, 3)));
                growth = 2;
            }
            else
            {
                damping *= growth;
                growth *= 2;
                converged |= damping > 1e40;
            }
        }
        return Finish(parameters, residual, jacobian, converged, iteration);
    }

    // Gets the last digits: undamped steps as long as each is smaller than the one before.
    private NonlinearFit Finish(
        double[] parameters,
        double[] residual,
        double[,] jacobian,
        bool converged,
        int iterations
    )
    {
        double smallest = double.PositiveInfinity;
        for (int polish = 0; converged && polish < 20; polish++)
        {
            double[] step = HouseholderSolver.Damped(jacobian, residual, new double[count], 0, out double predicted);
            double[] trial = [.. parameters.Zip(step, (p, s) => p + s)];
            double[] trialResidual = Residual(trial);
            if (!(predicted < 0.25 * smallest) || !(Square(trialResidual) <= Square(residual) * (1 + 1e-12)))
                break;
            (smallest, parameters, residual, jacobian) = (predicted, trial, trialResidual, Jacobian(trial));
        }
        double[,] covariance = HouseholderSolver.Covariance(jacobian, out double condition);
        return new NonlinearFit(
            parameters,
            covariance,
            Square(residual),
            points - count,
            converged,
            iterations,
            condition
        );
    }

    private double[] Residual(double[] parameters)
    {
        var residual = new double[points];
        for (int i = 0; i < points; i++)
            residual[i] = (y[i] - model(x[i], parameters)) / u[i];
        return residual;
    }

    private double[,] Jacobian(double[] parameters)
    {
        var jacobian = new double[points, count];
        var row = new double[count];
        for (int i = 0; i < points; i++)
        {
            gradient(x[i], parameters, row);
            for (int j = 0; j < count; j++)
                jacobian[i, j] = row[j] / u[i];
        }
        return jacobian;
    }

    private void CentralDifferences(double at, ReadOnlySpan<double> parameters, Span<double> result)
    {
        double[] shifted = parameters.ToArray();
        for (int j = 0; j < count; j++)
        {
            double size = parameters[j] != 0 ? Math.Abs(parameters[j]) : 1;
            double high = parameters[j] + 6e-6 * size,
                low = parameters[j] - 6e-6 * size;
            shifted[j] = high;
            double above = model(at, shifted);
            shifted[j] = low;
            result[j] = (above - model(at, shifted)) / (high - low);
            shifted[j] = parameters[j];
        }
    }

    private static void Rescale(double[] scale, double[,] jacobian)
    {
        for (int j = 0; j < scale.Length; j++)
        {
            double sum = 0;
            for (int i = 0; i < jacobian.GetLength(0); i++)
                sum += jacobian[i, j] * jacobian[i, j];
            // a huge start must not freeze the search (NIST MGH10)
            scale[j] = Math.Max(0.9 * scale[j], Math.Sqrt(sum));
        }
    }

    private static double Square(double[] values)
    {
        double sum = 0;
        foreach (double v in values)
            sum += v * v;
        return sum;
    }
}
