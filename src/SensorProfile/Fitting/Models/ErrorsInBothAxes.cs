namespace SensorProfile.Fitting.Models;

/// <summary>Straight line through points with uncertainties in x and y.</summary>
/// <remarks>York, Evensen, Martínez and Delgado 2004, Am. J. Phys. 72, 367: iterated weights W = 1/(u_y² + b²u_x² −
/// 2b·cov), uncertainties from the
/// adjusted points; the same solution and covariance as the generalised distance regression of ISO/TS 28037:2010,
/// clause 7.</remarks>
internal static class ErrorsInBothAxes
{
    private const int MostIterations = 500;

    /// <summary>Fits the line.</summary>
    /// <param name="x">Abscissae.</param> <param name="y">Ordinates.</param>
    /// <param name="xUncertainties">u(x), zero allowed where u(y) is not.</param>
    /// <param name="yUncertainties">u(y).</param>
    /// <param name="correlations">Correlation of the errors of x and y of each point; empty for none.</param>
    /// <exception cref="InvalidOperationException">The iteration did not settle.</exception>
    public static StraightLine Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> xUncertainties,
        ReadOnlySpan<double> yUncertainties,
        ReadOnlySpan<double> correlations = default
    )
    {
        if (y.Length != x.Length || xUncertainties.Length != x.Length || yUncertainties.Length != x.Length)
            throw new ArgumentException("Points and uncertainties differ in number.", nameof(x));
        double slope = StraightLine.Fit(x, y).Slope;
        var state = new Iteration(x.Length);
        for (int i = 0; i < MostIterations; i++)
        {
            double next = state.NextSlope(x, y, xUncertainties, yUncertainties, correlations, slope);
            double step = Math.Abs(next - slope);
            slope = next;
            if (step <= 1e-15 * Math.Abs(slope))
                return state.Result(x, y, xUncertainties, yUncertainties, correlations, slope);
        }
        // Rounding may leave the last digit swinging; anything coarser is a failure.
        double last = state.NextSlope(x, y, xUncertainties, yUncertainties, correlations, slope);
        if (Math.Abs(last - slope) > 1e-10 * Math.Abs(slope))
            throw new InvalidOperationException(
                "The line with errors in both axes did not settle; the points do not determine it."
            );
        return state.Result(x, y, xUncertainties, yUncertainties, correlations, slope);
    }

    private sealed class Iteration(int points)
    {
        private readonly double[] weights = new double[points],
            beta = new double[points];
        private double meanX,
            meanY;

        public double NextSlope(
            ReadOnlySpan<double> x,
            ReadOnlySpan<double> y,
            ReadOnlySpan<double> ux,
            ReadOnlySpan<double> uy,
            ReadOnlySpan<double> r,
            double slope
        )
        {
            double sum = 0;
            (meanX, meanY) = (0, 0);
            for (int i = 0; i < points; i++)
            {
                double covariance = r.IsEmpty ? 0 : r[i] * ux[i] * uy[i];
                weights[i] = 1 / (uy[i] * uy[i] + slope * slope * ux[i] * ux[i] - 2 * slope * covariance);
                sum += weights[i];
                meanX += weights[i] * x[i];
                meanY += weights[i] * y[i];
            }
            (meanX, meanY) = (meanX / sum, meanY / sum);
            double above = 0,
                below = 0;
            for (int i = 0; i < points; i++)
            {
                double covariance = r.IsEmpty ? 0 : r[i] * ux[i] * uy[i];
                double dx = x[i] - meanX,
                    dy = y[i] - meanY;
                beta[i] =
                    weights[i] * (dx * uy[i] * uy[i] + slope * dy * ux[i] * ux[i] - (slope * dx + dy) * covariance);
                above += weights[i] * beta[i] * dy;
                below += weights[i] * beta[i] * dx;
            }
            return above / below;
        }

        public StraightLine Result(
            ReadOnlySpan<double> x,
            ReadOnlySpan<double> y,
            ReadOnlySpan<double> ux,
            ReadOnlySpan<double> uy,
            ReadOnlySpan<double> r,
            double slope
        )
        {
            NextSlope(x, y, ux, uy, r, slope);
            double intercept = meanY - slope * meanX,
                chiSquared = 0,
                sum = 0,
                adjustedMean = 0,
                spread = 0;
            for (int i = 0; i < points; i++)
            {
                double residual = y[i] - intercept - slope * x[i];
                chiSquared += weights[i] * residual * residual;
                sum += weights[i];
                adjustedMean += weights[i] * (meanX + beta[i]);
            }
            adjustedMean /= sum;
            for (int i = 0; i < points; i++)
            {
                double offset = meanX + beta[i] - adjustedMean;
                spread += weights[i] * offset * offset;
            }
            double slopeVariance = 1 / spread;
            return new StraightLine(
                intercept,
                slope,
                1 / sum + adjustedMean * adjustedMean * slopeVariance,
                slopeVariance,
                -adjustedMean * slopeVariance,
                chiSquared,
                points - 2
            );
        }
    }
}
