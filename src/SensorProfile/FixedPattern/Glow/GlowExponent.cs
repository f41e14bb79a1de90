namespace SensorProfile.FixedPattern.Glow;

/// <summary>Exponent p of a signal against exposure: A = c + G·t^p.</summary>
internal static class GlowExponent
{
    private const double Lowest = 0.05,
        Highest = 3,
        Step = 0.005;

    /// <summary>
    /// Least squares over a grid of p, with c and G solved for at every p; the uncertainty is half the width at χ² + 1.
    /// Null with fewer than 3 exposures or if the signal is not significant.
    /// </summary>
    /// <remarks>c absorbs the signal at zero exposure (the bias pattern).</remarks>
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
        double[] powers = new double[seconds.Length];
        double ChiSquared(double exponent)
        {
            for (int i = 0; i < seconds.Length; i++)
                powers[i] = seconds[i] <= 0 ? 0 : Math.Pow(seconds[i] / longest, exponent);
            return AroundLine(powers, signals, uncertainties);
        }
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

    /// <summary>
    /// χ² of the weighted straight line, in closed form, because a search needs it hundreds of times.
    /// </summary>
    private static double AroundLine(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> uncertainties)
    {
        double weights = 0,
            centre = 0,
            level = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double w = 1 / (uncertainties[i] * uncertainties[i]);
            (weights, centre, level) = (weights + w, centre + w * x[i], level + w * y[i]);
        }
        (centre, level) = (centre / weights, level / weights);
        double squares = 0,
            products = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double w = 1 / (uncertainties[i] * uncertainties[i]),
                apart = x[i] - centre;
            (squares, products) = (squares + w * apart * apart, products + w * apart * (y[i] - level));
        }
        double slope = products / squares,
            chiSquared = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double off = (y[i] - level - slope * (x[i] - centre)) / uncertainties[i];
            chiSquared += off * off;
        }
        return chiSquared;
    }
}
