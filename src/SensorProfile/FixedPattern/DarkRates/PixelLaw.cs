using SensorProfile.Fitting.Models;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>
/// Temperature law of a single pixel: ln I = ln I_ref + a·x(T), with x the same for all pixels and 0 at the reference
/// temperature.
/// </summary>
/// <remarks>
/// x is the logarithm of the typical pixel's law over its value at the reference where that law is known and has no
/// constant floor (a is then the pixel's activation
/// relative to the typical one), else −(1/kT − 1/kT_ref), 1/eV (a is then the activation energy of Arrhenius' law).
/// Least squares on I itself, Σ((I − e^(b + a·x))/u)², by Gauss and Newton from a line through the logarithms of what exceeds
/// 4u. A fit of logarithms alone gives a reading that came out high by chance more weight than one that came out low, and
/// leaves the lowest out: faint hot pixels then came out 2 to 5 % too slow, and their rates 10 °C below the darks 5 to 15 %
/// too high (physical cameras simulated). Ordinary pixels use the temperatures at which the typical pixel exceeds 8u, and
/// have no law when those are too few.
/// </remarks>
internal sealed class PixelLaw
{
    private const double MinSignal = 4; // standard uncertainties
    private const double MinTypicalSignal = 8;
    private const int Refinements = 3;
    private const double MaxStep = 2; // of the logarithm: beyond it there is no law to be found

    private readonly double[] x,
        bent; // the abscissa of pixels that stand out
    private readonly bool[] forOrdinary;
    private readonly double slopePerDegree; // dx/dT at the reference temperature, 1/°C in units of x
    private readonly int fewest;

    /// <param name="temperatures">°C.</param>
    /// <param name="reference">°C.</param>
    /// <param name="typical">Law of the typical pixel without floor, e-/px/s; null when there is none.</param>
    /// <param name="typicalSignal">Rate of the typical pixel at each temperature over its uncertainty.</param>
    /// <param name="bend">How the abscissa of pixels that stand out departs from the typical one.</param>
    /// <param name="fewest">Temperatures needed for a law; with 2, a misfit cannot show.</param>
    public PixelLaw(
        IReadOnlyList<double> temperatures,
        double reference,
        Func<double, double>? typical,
        IReadOnlyList<double> typicalSignal,
        LawBend bend,
        int fewest = 3
    )
    {
        this.fewest = fewest;
        forOrdinary = [.. typicalSignal.Select(s => s > MinTypicalSignal)];
        x = [.. temperatures.Select(t => Abscissa(typical, reference, t))];
        bent = [.. x.Select(bend.At)];
        slopePerDegree = SlopePerDegree(typical, reference);
    }

    /// <summary>x at a temperature.</summary>
    public static double Abscissa(Func<double, double>? typical, double reference, double celsius) =>
        typical is null
            ? 1 / (PhysicalConstants.BoltzmannElectronVoltsPerKelvin * (reference + PhysicalConstants.ZeroCelsius))
                - 1 / (PhysicalConstants.BoltzmannElectronVoltsPerKelvin * (celsius + PhysicalConstants.ZeroCelsius))
            : Math.Log(typical(celsius) / typical(reference));

    /// <summary>
    /// dx/dT at the reference temperature, 1/°C in units of x: the doubling temperature there is ln 2/(a·dx/dT).
    /// </summary>
    public static double SlopePerDegree(Func<double, double>? typical, double reference)
    {
        const double Step = 0.05;
        return (Abscissa(typical, reference, reference + Step) - Abscissa(typical, reference, reference - Step))
            / (2 * Step);
    }

    /// <summary>
    /// Fits one pixel; null with too few usable temperatures, or when the rise of its rate with temperature is within a
    /// quarter of its uncertainty.
    /// </summary>
    /// <param name="outstanding">Whether the pixel stands out from the ordinary ones.</param>
    /// <param name="rates">Rate at each temperature, e-/px/s.</param>
    /// <param name="uncertainties">Standard uncertainties of the rates.</param>
    /// <returns>ln I at the reference and its uncertainty; doubling temperature ln 2/(a·dx/dT) and its uncertainty, °C;
    /// correlation of ln I and a.</returns>
    public (
        double LogRate,
        double LogRateUncertainty,
        double Doubling,
        double DoublingUncertainty,
        double Correlation
    )? Fit(bool outstanding, ReadOnlySpan<double> rates, ReadOnlySpan<double> uncertainties)
    {
        double[] x = outstanding ? bent : this.x;
        var start = new LawSums();
        for (int i = 0; i < rates.Length; i++)
            if (TakesPart(outstanding, i) && rates[i] > (outstanding ? MinSignal * uncertainties[i] : 0))
                start.Add(x[i], Math.Log(rates[i]), rates[i] / uncertainties[i]);
        if (start.Count < fewest || start.Solve() is not { } line)
            return null;
        (double b, double a) = line;
        var sums = start;
        for (int step = 0; step < Refinements; step++)
        {
            sums = new LawSums();
            for (int i = 0; i < rates.Length; i++)
            {
                if (!TakesPart(outstanding, i) || double.IsNaN(rates[i]))
                    continue;
                double log = b + a * x[i],
                    expected = Math.Exp(log);
                sums.Add(x[i], log + rates[i] / expected - 1, expected / uncertainties[i]);
            }
            if (sums.Solve() is not { } next || !(Math.Abs(next.Intercept - b) < MaxStep))
                return null;
            (b, a) = next;
        }
        (double s, double sx, double sxx, int n) = (sums.Weights, sums.X, sums.XX, sums.Count);
        double determinant = s * sxx - sx * sx;
        // a pixel that follows no such law is known less well
        double misfit = n == 2 ? 1 : Math.Max(1, sums.ChiSquared(b, a) / (n - 2));
        double ua = Math.Sqrt(s / determinant * misfit),
            ub = Math.Sqrt(sxx / determinant * misfit);
        double doubling = Math.Log(2) / (a * slopePerDegree);
        return a > 4 * ua && doubling > 0 ? (b, ub, doubling, doubling * ua / a, -sx / Math.Sqrt(s * sxx)) : null;
    }

    private bool TakesPart(bool outstanding, int temperature) => outstanding || forOrdinary[temperature];

    /// <summary>Sums of a weighted straight line.</summary>
    private struct LawSums
    {
        private double y,
            xy,
            yy;

        public double Weights { get; private set; }
        public double X { get; private set; }
        public double XX { get; private set; }
        public int Count { get; private set; }

        /// <param name="x">Abscissa.</param> <param name="value">Ordinate.</param>
        /// <param name="signal">1/u of the ordinate.</param>
        public void Add(double x, double value, double signal)
        {
            double w = signal * signal;
            (Weights, X, XX, Count) = (Weights + w, X + w * x, XX + w * x * x, Count + 1);
            (y, xy, yy) = (y + w * value, xy + w * x * value, yy + w * value * value);
        }

        /// <summary>Intercept and slope; null where the abscissas do not tell a slope.</summary>
        public readonly (double Intercept, double Slope)? Solve()
        {
            double determinant = Weights * XX - X * X,
                slope = (Weights * xy - X * y) / determinant;
            return determinant > 0 ? ((y - slope * X) / Weights, slope) : null;
        }

        public readonly double ChiSquared(double intercept, double slope) =>
            yy
            - 2 * intercept * y
            - 2 * slope * xy
            + intercept * intercept * Weights
            + 2 * intercept * slope * X
            + slope * slope * XX;
    }
}
