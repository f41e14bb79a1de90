namespace SensorProfile.Fitting.Models;

/// <summary>A fitted straight line y = intercept + slope·x with its covariance.</summary>
/// <param name="Intercept">Value at x = 0.</param>
/// <param name="Slope">Rise per unit of x.</param>
/// <param name="InterceptVariance">u²(intercept).</param>
/// <param name="SlopeVariance">u²(slope).</param>
/// <param name="Covariance">cov(intercept, slope).</param>
/// <param name="ChiSquared">Σ((y − line)/u)².</param>
/// <param name="DegreesOfFreedom">Number of points minus 2.</param>
internal sealed record StraightLine(
    double Intercept,
    double Slope,
    double InterceptVariance,
    double SlopeVariance,
    double Covariance,
    double ChiSquared,
    int DegreesOfFreedom
)
{
    /// <summary>u(intercept).</summary>
    public double InterceptUncertainty => Math.Sqrt(InterceptVariance);

    /// <summary>u(slope).</summary>
    public double SlopeUncertainty => Math.Sqrt(SlopeVariance);

    /// <summary>χ²/ν; zero without degrees of freedom.</summary>
    public double ReducedChiSquared => DegreesOfFreedom > 0 ? ChiSquared / DegreesOfFreedom : 0;

    /// <summary>Weighted fit with known uncertainties of y ("absolute" covariance).</summary>
    /// <remarks>
    /// Centred on the weighted mean of x, so intercept and slope are found without cancellation. ISO/TS 28037:2010,
    /// clause 6.
    /// </remarks>
    /// <param name="x">Abscissae, at least two of them different.</param> <param name="y">Observed values.</param>
    /// <param name="uncertainties">Standard uncertainties of y; empty for an unweighted fit.</param>
    public static StraightLine Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> uncertainties = default
    )
    {
        double weights = 0,
            centre = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double w = uncertainties.IsEmpty ? 1 : 1 / (uncertainties[i] * uncertainties[i]);
            weights += w;
            centre += w * x[i];
        }
        centre /= weights;
        var ones = new double[x.Length];
        var centred = new double[x.Length];
        for (int i = 0; i < x.Length; i++)
            (ones[i], centred[i]) = (1, x[i] - centre);
        LinearFit fit = LinearLeastSquares.Fit([ones, centred], y, uncertainties);
        double va = fit.Covariance[0, 0],
            vb = fit.Covariance[1, 1],
            cab = fit.Covariance[0, 1];
        return new StraightLine(
            fit.Parameters[0] - fit.Parameters[1] * centre,
            fit.Parameters[1],
            va - 2 * centre * cab + centre * centre * vb,
            vb,
            cab - centre * vb,
            fit.ChiSquared,
            fit.DegreesOfFreedom
        );
    }

    /// <summary>
    /// The line with its variances multiplied by χ²/ν: for uncertainties known only up to a common factor.
    /// </summary>
    public StraightLine Scaled() =>
        this with
        {
            InterceptVariance = InterceptVariance * ReducedChiSquared,
            SlopeVariance = SlopeVariance * ReducedChiSquared,
            Covariance = Covariance * ReducedChiSquared,
        };

    /// <summary>Value of the line at x with its standard uncertainty.</summary>
    public (double Value, double Uncertainty) At(double x) =>
        (Intercept + Slope * x, Math.Sqrt(Math.Max(0, InterceptVariance + 2 * x * Covariance + x * x * SlopeVariance)));
}
