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
    /// Limits that stand for ±1σ, each one-sided at Φ(1) = 84.134 % (Gehrels 1986, ApJ 303, 336, his definition, solved
    /// exactly).
    /// </summary>
    public static (double Low, double High) PoissonOneSigma(long count)
    {
        double tail = Probability.NormalTail(1);
        return (LowerPoisson(count, tail), UpperPoisson(count, tail));
    }

    /// <summary>
    /// Share k/n, exact limits by Clopper and Pearson 1934, Biometrika 26, 404: never covers less than asked for.
    /// </summary>
    public static (double Low, double High) ClopperPearson(long successes, long trials, double confidence = 0.95)
    {
        double tail = (1 - confidence) / 2;
        double low = successes == 0 ? 0 : Probability.BetaQuantile(tail, successes, trials - successes + 1);
        double high = successes == trials ? 1 : Probability.BetaQuantile(1 - tail, successes + 1, trials - successes);
        return (low, high);
    }

    /// <summary>Share k/n, score limits by Wilson 1927, JASA 22, 209: close to the asked coverage on average.</summary>
    public static (double Low, double High) Wilson(long successes, long trials, double confidence = 0.95)
    {
        double z = Probability.NormalQuantile((1 + confidence) / 2),
            n = trials,
            share = successes / n;
        double centre = (share + z * z / (2 * n)) / (1 + z * z / n);
        double half = z / (1 + z * z / n) * Math.Sqrt(share * (1 - share) / n + z * z / (4 * n * n));
        return (successes == 0 ? 0 : centre - half, successes == trials ? 1 : centre + half);
    }

    private static double LowerPoisson(long count, double tail) =>
        count == 0 ? 0 : Probability.ChiSquaredQuantile(tail, 2.0 * count) / 2;

    private static double UpperPoisson(long count, double tail) =>
        Probability.ChiSquaredQuantile(1 - tail, 2.0 * count + 2) / 2;
}
