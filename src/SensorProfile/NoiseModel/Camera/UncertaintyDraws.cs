namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// Carries the uncertainties of a profile and of the sky through a decision by repeated, seeded draws (GUM supplement
/// 1, JCGM 101:2008).
/// </summary>
internal static class UncertaintyDraws
{
    /// <summary>
    /// The ends of an interval from 120 draws are known to an eighth of their distance from the middle: a 95 % interval
    /// holds 93 to 97 %.
    /// </summary>
    internal const int Draws = 120;

    /// <summary>Number of draws where each costs little.</summary>
    internal const int ManyDraws = 500;

    private const int Seed = 20290; // any fixed number: the same question always gets the same answer

    /// <summary>Spread of a decision over the draws.</summary>
    /// <param name="StandardDeviation">Half the 68 % interval of the solved draws, so that a few outlying draws do not
    /// inflate it.</param>
    /// <param name="Low">2.5 % point; null where no answer exists there.</param>
    /// <param name="High">97.5 % point; null where no answer exists there.</param>
    /// <param name="Solved">Share of the draws with an answer.</param>
    internal readonly record struct Spread(double StandardDeviation, double? Low, double? High, double Solved)
    {
        /// <summary>Number of draws.</summary>
        internal int Count { get; init; } = Draws;

        /// <summary>The spread of a value with a standard uncertainty that the draws do not hold; an open end stays open.</summary>
        internal Spread With(double value, double uncertainty) =>
            this with
            {
                StandardDeviation = double.Hypot(StandardDeviation, uncertainty),
                Low = Low is { } low ? value - double.Hypot(value - low, 1.96 * uncertainty) : null,
                High = High is { } high ? value + double.Hypot(high - value, 1.96 * uncertainty) : null,
            };
    }

    /// <summary>
    /// Draws models and skies, and summarises each decision; a decision is identified by its index in the result of
    /// <paramref name="decide"/>.
    /// </summary>
    /// <param name="reader">The profile.</param>
    /// <param name="sky">The sky.</param>
    /// <param name="decide">The decisions of one draw; null or infinite members are draws without an answer.</param>
    /// <param name="draws">How many.</param>
    internal static Spread[] Through(
        SensorReader reader,
        Measurement sky,
        Func<SensorModel, double, double?[]> decide,
        int draws = Draws
    ) => Through(reader, sky, decide, RemainingUncertainty.Whole, draws);

    /// <summary>The same with reduced uncertainties.</summary>
    internal static Spread[] Through(
        SensorReader reader,
        Measurement sky,
        Func<SensorModel, double, double?[]> decide,
        RemainingUncertainty left,
        int draws = Draws
    )
    {
        var models = new List<(SensorModel Model, double Sky)>();
        foreach ((double deviate, SensorModel? drawnModel) in DrawnFrom(reader, left, draws))
            // a sky stays above 0
            if (drawnModel is { } model)
                models.Add((model, sky.Value * Math.Exp(deviate * left.Lights * sky.StandardUncertainty / sky.Value)));
        // each draw in its own slot: the same at any thread count
        double?[][] drawn = new double?[models.Count][];
        Parallel.For(0, drawn.Length, i => drawn[i] = decide(models[i].Model, models[i].Sky));
        int width = drawn.Length == 0 ? decide(reader.Best, sky.Value).Length : drawn[0].Length;
        return [.. Enumerable.Range(0, width).Select(i => Of([.. drawn.Select(d => d[i])], draws))];
    }

    /// <summary>
    /// The same for a decision that rests on a few quantities, each with its own uncertainty: <paramref name="decide"/>
    /// draws them using the standard normal deviates it is given.
    /// </summary>
    internal static Spread Draw(Func<Func<double>, double?> decide)
    {
        var random = new Random(Seed);
        double Next() => SensorReader.Deviate(random);
        return Of([.. Enumerable.Range(0, ManyDraws).Select(_ => decide(Next))], ManyDraws);
    }

    private static IEnumerable<(double Sky, SensorModel? Model)> DrawnFrom(
        SensorReader reader,
        RemainingUncertainty left,
        int draws
    )
    {
        if (left == RemainingUncertainty.Whole)
            return reader.Draws(draws, Seed);
        var random = new Random(Seed);
        return Enumerable.Range(0, draws).Select(_ => (SensorReader.Deviate(random), reader.Draw(random, left)));
    }

    private static Spread Of(double?[] values, int draws)
    {
        double[] solved = [.. values.OfType<double>().Where(double.IsFinite).Order()];
        double share = (double)solved.Length / draws;
        if (solved.Length < 10)
            return new Spread(0, null, null, share) { Count = draws };
        bool whole = share >= 0.975;
        return new Spread(
            (At(solved, 0.84134) - At(solved, 0.15866)) / 2,
            whole ? Edge(solved, 0.025) : null,
            whole ? Edge(solved, 0.975) : null,
            share
        )
        {
            Count = draws,
        };
    }

    /// <summary>
    /// End of an interval that holds one further draw with the stated probability: rank p·(n + 1), not p·(n − 1) + 1,
    /// by which 120 draws would hold 93.4 % instead of 95 %.
    /// </summary>
    private static double Edge(double[] sorted, double share)
    {
        int n = sorted.Length;
        return At(sorted, n > 1 ? Math.Clamp((share * (n + 1) - 1) / (n - 1), 0, 1) : 0);
    }

    private static double At(double[] sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int low = (int)place;
        return low + 1 < sorted.Length ? sorted[low] + (place - low) * (sorted[low + 1] - sorted[low]) : sorted[^1];
    }
}
