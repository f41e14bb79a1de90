using SensorProfile.Fitting.Models;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>A temperature law with fitted parameters.</summary>
/// <param name="Law">The formula.</param>
/// <param name="Parameters">Best estimates; rates and floor are not negative.</param>
/// <param name="Covariance">Covariance of the parameters. An amplitude held at zero counts as free, so that it does not
/// look certain; a floor held at zero does not enter: the fit is then the one without a floor.</param>
/// <param name="Uncertainties">Standard uncertainties of the parameters; those held at zero are treated as
/// free.</param>
/// <param name="AtBound">Which parameters are held at zero because the data prefer a negative value.</param>
/// <param name="ChiSquared">χ² at the minimum.</param>
/// <param name="DegreesOfFreedom">Points minus parameters, including those at a bound.</param>
internal sealed record FittedLaw(
    TemperatureLaw Law,
    double[] Parameters,
    double[,] Covariance,
    double[] Uncertainties,
    bool[] AtBound,
    double ChiSquared,
    int DegreesOfFreedom
)
{
    /// <summary>Probability of a larger χ² by chance.</summary>
    public double Probability => Fitting.Statistics.Probability.ChiSquaredTail(ChiSquared, DegreesOfFreedom);

    /// <summary>Rate at a temperature and its standard uncertainty, e-/px/s.</summary>
    public (double Value, double Uncertainty) RateAt(double temperatureCelsius)
    {
        var gradient = new double[Law.Count];
        Law.Gradient(temperatureCelsius, Parameters, gradient);
        return (Law.Rate(temperatureCelsius, Parameters), Math.Sqrt(ErrorPropagation.Variance(gradient, Covariance)));
    }

    /// <summary>Doubling temperature from the local slope and its standard uncertainty, °C.</summary>
    public (double Value, double Uncertainty) DoublingAt(double temperatureCelsius) =>
        ErrorPropagation.Propagate(p => Law.Doubling(temperatureCelsius, p), Parameters, Covariance);

    /// <summary>
    /// Doubling temperature of the thermal part (without the floor) and its standard uncertainty, °C.
    /// </summary>
    public (double Value, double Uncertainty) ThermalDoublingAt(double temperatureCelsius) =>
        ErrorPropagation.Propagate(p => Law.ThermalDoubling(temperatureCelsius, p), Parameters, Covariance);

    /// <summary>The same fit with its covariance multiplied by a factor.</summary>
    public FittedLaw Widened(double factor) =>
        this with
        {
            Covariance = CovarianceMatrix.Scale(Covariance, factor),
            Uncertainties = [.. Uncertainties.Select(u => u * Math.Sqrt(factor))],
        };

    /// <summary>
    /// The same fit with a relative uncertainty common to all rates (that of the gain): it shifts all rates alike, and
    /// no doubling temperature.
    /// </summary>
    public FittedLaw WithCommon(double relativeUncertainty)
    {
        var covariance = (double[,])Covariance.Clone();
        for (int i = 0; i < Law.Count; i++)
        for (int j = 0; j < Law.Count; j++)
            if (Law.IsRate(i) && Law.IsRate(j))
                covariance[i, j] += relativeUncertainty * relativeUncertainty * Parameters[i] * Parameters[j];
        double[] uncertainties =
        [
            .. Uncertainties.Select(
                (u, i) => Law.IsRate(i) ? Math.Sqrt(u * u + Math.Pow(relativeUncertainty * Parameters[i], 2)) : u
            ),
        ];
        return this with { Covariance = covariance, Uncertainties = uncertainties };
    }

    /// <summary>The same fit with the errors of temperature that its points share.</summary>
    /// <remarks>
    /// Temperatures that are all off by δᵢ move the parameters by dp, the least-squares solution of J·dp = −(dI/dT)·δ with
    /// the weights of the fit, and each cause adds dp·dpᵀ to the covariance. A scale off by ε moves the doubling temperature
    /// by ε of itself.
    /// </remarks>
    public FittedLaw WithSharedErrors(IReadOnlyList<TemperaturePoint> points)
    {
        int causes = points.Max(p => p.SharedErrors.Count);
        int[] free = [.. Enumerable.Range(0, Law.Count).Where(j => !AtBound[j])];
        if (causes == 0 || free.Length == 0)
            return this;
        double[][] columns = [.. free.Select(_ => new double[points.Count])];
        var gradient = new double[Law.Count];
        for (int i = 0; i < points.Count; i++)
        {
            Law.Gradient(points[i].TemperatureCelsius, Parameters, gradient);
            for (int j = 0; j < free.Length; j++)
                columns[j][i] = gradient[free[j]];
        }
        double[] weights = [.. points.Select(p => p.Uncertainty)];
        var covariance = (double[,])Covariance.Clone();
        var uncertainties = (double[])Uncertainties.Clone();
        for (int cause = 0; cause < causes; cause++)
        {
            double[] moved =
            [
                .. points.Select(p => -Law.Slope(p.TemperatureCelsius, Parameters) * p.SharedErrors[cause]),
            ];
            double[] change = LinearLeastSquares.Fit(columns, moved, weights).Parameters;
            for (int i = 0; i < free.Length; i++)
            {
                uncertainties[free[i]] = double.Hypot(uncertainties[free[i]], change[i]);
                for (int j = 0; j < free.Length; j++)
                    covariance[free[i], free[j]] += change[i] * change[j];
            }
        }
        return this with { Covariance = covariance, Uncertainties = uncertainties };
    }
}
