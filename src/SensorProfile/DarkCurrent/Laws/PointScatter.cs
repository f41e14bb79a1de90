using MathNet.Numerics.RootFinding;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>
/// Uncertainties of the points including their temperature errors, and the scatter that these do not explain.
/// </summary>
/// <remarks>u_eff² = u² + (dI/dT)²·u_T²: a temperature error moves a point along the law. Where χ² of the best law
/// exceeds its degrees of freedom ν, it is brought down to ν in the more likely of two ways (smaller Σ ln u_eff; the
/// first unless the second is e times more likely). Either a temperature scatter s common to all points is added to
/// u_T² (after Mandel and Paule 1970, Anal. Chem. 42, 1194): the usual cause is a probe that does not show the
/// temperature of the sensor itself, whose error is proportional to the rate. Or all uncertainties are multiplied by a
/// factor (Birge 1932, Phys. Rev. 40, 207). Covariances are widened by Student's t as far as they come from the
/// scatter.</remarks>
internal static class PointScatter
{
    private const double Significance = 0.05,
        MaxScatter = 10;

    /// <summary>Fits all laws, allowing for the scatter found; null when none can be fitted.</summary>
    public static ScatteredFits? Fit(IReadOnlyList<TemperatureLaw> laws, IReadOnlyList<TemperaturePoint> points)
    {
        var data = new Data(points);
        double[] stated = data.RateUncertainties;
        FittedLaw[] fits = All(laws, data, stated);
        // Twice, because the slopes that turn temperature errors into rate errors come from the previous fit.
        for (int pass = 0; pass < 2 && fits.Length > 0 && data.TemperaturesUncertain; pass++)
        {
            stated = data.Effective(Best(fits), 0);
            fits = All(laws, data, stated);
        }
        if (fits.Length == 0)
            return null;
        FittedLaw best = Best(fits);
        return best.ChiSquared <= best.DegreesOfFreedom
            ? new ScatteredFits([.. fits.Select(OwnMisfit)], 0, 1, false)
            : Scattered(laws, data, stated, best);
    }

    private static ScatteredFits? Scattered(
        IReadOnlyList<TemperatureLaw> laws,
        Data data,
        double[] stated,
        FittedLaw best
    )
    {
        double factor = Math.Sqrt(best.ChiSquared / best.DegreesOfFreedom),
            scatter = TemperatureScatter(best, data);
        double[] byFactor = [.. stated.Select(u => u * factor)],
            byTemperature = data.Effective(best, scatter);
        bool temperature = byTemperature.Sum(u => Math.Log(u)) < byFactor.Sum(u => Math.Log(u)) + 1;
        double[] widened = temperature ? byTemperature : byFactor;
        FittedLaw[] fits = All(laws, data, widened);
        if (fits.Length == 0)
            return null;
        // Mean share of the variances due to scatter; it decides how much the few degrees of freedom behind the scatter
        // count (Welch and Satterthwaite).
        double share = widened.Zip(stated, (w, u) => 1 - u * u / (w * w)).Average();
        double widening = Probability.CoverageWidening(best.DegreesOfFreedom / (share * share));
        return new ScatteredFits(
            [.. fits.Select(f => OwnMisfit(f).Widened(widening * widening))],
            temperature ? scatter : 0,
            temperature ? 1 : factor,
            best.Probability < Significance
        );
    }

    // With few points, a law that misses them keeps a finite weight; its own error bars must then allow for the misfit.
    private static FittedLaw OwnMisfit(FittedLaw fit) =>
        fit.Probability < Significance ? fit.Widened(fit.ChiSquared / fit.DegreesOfFreedom) : fit;

    private static FittedLaw[] All(IReadOnlyList<TemperatureLaw> laws, Data data, double[] uncertainties) =>
        [.. laws.Select(law => LawFit.Fit(law, data.Temperatures, data.Rates, uncertainties)).OfType<FittedLaw>()];

    // A law with a single degree of freedom passes near anything, so it is no judge of the points when others have
    // more.
    private static FittedLaw Best(IReadOnlyList<FittedLaw> fits)
    {
        int enough = Math.Min(2, fits.Max(f => f.DegreesOfFreedom));
        return fits.Where(f => f.DegreesOfFreedom >= enough)
            .MaxBy(f => (f.Probability, -f.ChiSquared / f.DegreesOfFreedom))!;
    }

    private static double TemperatureScatter(FittedLaw best, Data data)
    {
        double Excess(double scatter) =>
            LawFit.Fit(best.Law, data.Temperatures, data.Rates, data.Effective(best, scatter)) is { } fit
                ? fit.ChiSquared - fit.DegreesOfFreedom
                : -1;
        double low = 0,
            high = 0.01;
        while (high < MaxScatter && Excess(high) > 0)
            (low, high) = (high, 2 * high);
        // if a law can be fitted at one scatter but not at the next, the misfit jumps and has no root: keep the larger
        // scatter
        return high < MaxScatter && Brent.TryFindRoot(Excess, low, high, 1e-9, 100, out double root) ? root : high;
    }

    private sealed class Data(IReadOnlyList<TemperaturePoint> points)
    {
        public double[] Temperatures { get; } = [.. points.Select(p => p.TemperatureCelsius)];

        public double[] Rates { get; } = [.. points.Select(p => p.Rate)];

        public bool TemperaturesUncertain { get; } = points.Any(p => p.TemperatureUncertainty > 0);

        public double[] RateUncertainties { get; } = [.. points.Select(p => p.Uncertainty)];

        public double[] Effective(FittedLaw law, double scatter) =>
            [
                .. points.Select(p =>
                {
                    double slope = law.Law.Slope(p.TemperatureCelsius, law.Parameters);
                    return Math.Sqrt(
                        p.Uncertainty * p.Uncertainty
                            + slope * slope * (p.TemperatureUncertainty * p.TemperatureUncertainty + scatter * scatter)
                    );
                }),
            ];
    }
}
