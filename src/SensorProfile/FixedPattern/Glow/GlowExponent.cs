using SensorProfile.Fitting.Models;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>Exponent of a signal against exposure: A = c + G·t^p.</summary>
internal static class GlowExponent
{
    private const double Lowest = 0.05,
        Highest = 3,
        Step = 0.005;

    /// <summary>
    /// Least squares over a grid of p, with c and G solved for at every p; the uncertainty is half the width at χ² + 1.
    /// Null with fewer than 3 exposures or when the signal does not stand out.
    /// </summary>
    /// <remarks>c takes up what the place shows without exposure (its bias pattern).</remarks>
    /// <param name="seconds">Exposures, s.</param>
    /// <param name="signals">A.</param>
    /// <param name="uncertainties">Standard uncertainties of A, positive.</param>
    public static (double P, double U)? Fit(double[] seconds, double[] signals, double[] uncertainties)
    {
        if (seconds.Distinct().Count() < 3 || uncertainties.Any(u => !(u > 0)))
            return null;
        double longest = seconds.Max(),
            best = double.PositiveInfinity,
            p = 1;
        double ChiSquared(double exponent) =>
            StraightLine
                .Fit([.. seconds.Select(t => t <= 0 ? 0 : Math.Pow(t / longest, exponent))], signals, uncertainties)
                .ChiSquared;
        for (double trial = Lowest; trial <= Highest; trial += Step)
            if (ChiSquared(trial) is var chi && chi < best)
                (best, p) = (chi, trial);
        double low = p,
            high = p;
        while (low > Lowest && ChiSquared(low) < best + 1)
            low -= Step;
        while (high < Highest && ChiSquared(high) < best + 1)
            high += Step;
        return low <= Lowest || high >= Highest ? null : (p, Math.Max(Step, (high - low) / 2));
    }
}
