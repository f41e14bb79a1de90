namespace SensorProfile.Fitting.Statistics;

/// <summary>Exact confidence limits of counts and of shares.</summary>
internal static class CountIntervals
{
    /// <summary>
    /// Two-sided limits of a Poisson mean after n events: ½χ²(α/2; 2n) and ½χ²(1 − α/2; 2n + 2) (Garwood 1936).
    /// </summary>
    public static (double Low, double High) Poisson(long count, double confidence = 0.95)
    {
        double tail = (1 - confidence) / 2;
        return (LowerPoisson(count, tail), UpperPoisson(count, tail));
    }

    /// <summary>
    /// Limits equivalent to ±1σ, each one-sided at Φ(1) = 84.134 % (as defined by Gehrels 1986, ApJ 303, 336, solved
    /// exactly).
    /// </summary>
    public static (double Low, double High) PoissonOneSigma(long count)
    {
        double tail = Probability.NormalTail(1);
        return (LowerPoisson(count, tail), UpperPoisson(count, tail));
    }

    private static double LowerPoisson(long count, double tail) =>
        count == 0 ? 0 : Probability.ChiSquaredQuantile(tail, 2.0 * count) / 2;

    private static double UpperPoisson(long count, double tail) =>
        Probability.ChiSquaredQuantile(1 - tail, 2.0 * count + 2) / 2;
}
