using SensorProfile.Fitting.Models;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>
/// Temperature law of a single pixel: ln I = ln I_ref + a·x(T), with x the same for all pixels and 0 at the reference
/// temperature.
/// </summary>
/// <remarks>
/// If the law of the typical pixel is known and has no constant floor, x is the logarithm of that law over its value at
/// the reference (a is then the activation of the pixel relative to the typical one); otherwise x is −(1/kT −
/// 1/kT_ref), 1/eV (a is then the Arrhenius activation energy). Weighted least squares on ln I with u(ln I) = u/I; only
/// temperatures where I exceeds 4u are used, so that the logarithm stays nearly normal. For ordinary pixels, the choice
/// of temperatures must not depend on their own noise: a cold reading that is high by chance would stay in, one that is
/// low would not, and the law would be too flat. Ordinary pixels therefore use the temperatures at which the typical
/// pixel exceeds 8u, and have no law if these are too few.
/// </remarks>
internal sealed class PixelLaw
{
    private const double MinSignal = 4; // standard uncertainties
    private const double MinTypicalSignal = 8;

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
        bent = [.. x.Select(bend.Of)];
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
        double s = 0,
            sx = 0,
            sy = 0,
            sxx = 0,
            sxy = 0,
            syy = 0;
        int n = 0;
        double[] x = outstanding ? bent : this.x;
        for (int i = 0; i < rates.Length; i++)
        {
            if (!outstanding && !forOrdinary[i])
                continue;
            if (!(rates[i] > (outstanding ? MinSignal * uncertainties[i] : 0)))
                continue;
            double y = Math.Log(rates[i]),
                w = rates[i] / uncertainties[i];
            w *= w;
            (s, sx, sy, sxx, sxy, syy) = (
                s + w,
                sx + w * x[i],
                sy + w * y,
                sxx + w * x[i] * x[i],
                sxy + w * x[i] * y,
                syy + w * y * y
            );
            n++;
        }
        double determinant = s * sxx - sx * sx;
        if (n < fewest || !(determinant > 0))
            return null;
        double a = (s * sxy - sx * sy) / determinant,
            b = (sy - a * sx) / s;
        // a pixel that does not follow the law is known less well
        double misfit = n == 2 ? 1 : Math.Max(1, (syy - b * sy - a * sxy) / (n - 2));
        double ua = Math.Sqrt(s / determinant * misfit),
            ub = Math.Sqrt(sxx / determinant * misfit);
        double doubling = Math.Log(2) / (a * slopePerDegree);
        return a > 4 * ua && doubling > 0 ? (b, ub, doubling, doubling * ua / a, -sx / Math.Sqrt(s * sxx)) : null;
    }
}
