using MathNet.Numerics.RootFinding;
using SensorProfile.Fitting;

namespace SensorProfile.DarkCurrent;

/// <summary>Uncertainties of the points with their temperature errors, and the scatter that these leave unexplained.</summary>
/// <remarks>u_eff² = u² + (dI/dT)²·(u_T² + s²): a temperature error moves a point along the law. Where even the best law misses the points by more than
/// their uncertainties (χ² beyond its 95 % point), the common temperature scatter s that brings χ² to ν is estimated (after Mandel and Paule 1970, Anal.
/// Chem. 42, 1194): a probe that does not show the sensor's own temperature is the usual cause, and its error is proportional to the rate.</remarks>
internal static class PointScatter
{
    private const double Significance = 0.05, MostScatter = 10;

    /// <summary>Fits all laws, with the scatter found; null when none can be fitted.</summary>
    public static (IReadOnlyList<FittedLaw> Fits, double Scatter)? Fit(IReadOnlyList<TemperatureLaw> laws, IReadOnlyList<TemperaturePoint> points)
    {
        var data = new Data(points);
        FittedLaw[] fits = All(laws, data, data.RateUncertainties);
        if (fits.Length == 0) return null;
        FittedLaw best = Best(fits);
        if (points.Any(p => p.TemperatureUncertainty > 0))
        {
            fits = All(laws, data, data.Effective(best, 0));
            if (fits.Length == 0) return null;
            best = Best(fits);
            fits = All(laws, data, data.Effective(best, 0));
            if (fits.Length == 0) return null;
            best = Best(fits);
        }
        if (best.Probability >= Significance) return ([.. fits.Select(OwnMisfit)], 0);
        double scatter = Scatter(best, data);
        FittedLaw[] scattered = All(laws, data, data.Effective(best, scatter));
        if (scattered.Length == 0) return ([.. fits.Select(OwnMisfit)], 0);
        double widening = Probability.CoverageWidening(best.DegreesOfFreedom);
        return ([.. scattered.Select(f => OwnMisfit(f).Widened(widening * widening))], scatter);
    }

    // A law that misses the points keeps a finite weight with few points; its own error bars must then admit the misfit.
    private static FittedLaw OwnMisfit(FittedLaw fit) =>
        fit.Probability < Significance ? fit.Widened(fit.ChiSquared / fit.DegreesOfFreedom) : fit;

    private static FittedLaw[] All(IReadOnlyList<TemperatureLaw> laws, Data data, double[] uncertainties) =>
        [.. laws.Select(law => LawFit.Fit(law, data.Temperatures, data.Rates, uncertainties)).OfType<FittedLaw>()];

    private static FittedLaw Best(IReadOnlyList<FittedLaw> fits) => fits.MaxBy(f => (f.Probability, -f.ChiSquared / f.DegreesOfFreedom))!;

    private static double Scatter(FittedLaw best, Data data)
    {
        double Excess(double scatter) =>
            LawFit.Fit(best.Law, data.Temperatures, data.Rates, data.Effective(best, scatter)) is { } fit ? fit.ChiSquared - fit.DegreesOfFreedom : -1;
        double low = 0, high = 0.01;
        while (high < MostScatter && Excess(high) > 0) (low, high) = (high, 2 * high);
        return high < MostScatter ? Brent.FindRoot(Excess, low, high, 1e-9, 100) : high;
    }

    private sealed class Data(IReadOnlyList<TemperaturePoint> points)
    {
        public double[] Temperatures { get; } = [.. points.Select(p => p.TemperatureCelsius)];

        public double[] Rates { get; } = [.. points.Select(p => p.Rate)];

        public double[] RateUncertainties { get; } = [.. points.Select(p => p.Uncertainty)];

        public double[] Effective(FittedLaw law, double scatter) => [.. points.Select(p =>
        {
            double slope = law.Law.Slope(p.TemperatureCelsius, law.Parameters);
            return Math.Sqrt(p.Uncertainty * p.Uncertainty + slope * slope * (p.TemperatureUncertainty * p.TemperatureUncertainty + scatter * scatter));
        })];
    }
}
