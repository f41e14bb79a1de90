namespace SensorProfile.Decisions;

/// <summary>Carries the uncertainties of a profile and of the sky through a decision by repeated, seeded draws (GUM supplement 1, JCGM 101:2008).</summary>
internal static class Propagation
{
    internal const int Draws = 120;
    private const int Seed = 20290;   // any fixed number: the same question always gets the same answer

    /// <summary>Spread of a decision over the draws.</summary>
    /// <param name="StandardDeviation">Half the 68 % interval of the solved draws, which a few far draws cannot inflate.</param>
    /// <param name="Low">2.5 % point; null when it was not solvable there.</param>
    /// <param name="High">97.5 % point; null when it was not solvable there.</param>
    /// <param name="Solved">Share of the draws with an answer.</param>
    internal readonly record struct Spread(double StandardDeviation, double? Low, double? High, double Solved);

    /// <summary>Draws models and skies, and collects each decision named by its place in the result of <paramref name="decide"/>.</summary>
    /// <param name="reader">The profile.</param>
    /// <param name="sky">The sky.</param>
    /// <param name="decide">The decisions of one draw; null or infinite members are draws without an answer.</param>
    internal static Spread[] Through(SensorReader reader, Measurement sky, Func<SensorModel, double, double?[]> decide) => Through(reader, sky, decide, DoubtLeft.Whole);

    /// <summary>The same with what would be left of the uncertainties.</summary>
    internal static Spread[] Through(SensorReader reader, Measurement sky, Func<SensorModel, double, double?[]> decide, DoubtLeft left)
    {
        var random = new Random(Seed);
        var models = new List<(SensorModel Model, double Sky)>();
        for (int i = 0; i < Draws; i++)
        {
            double s = sky.Value * Math.Exp(SensorReader.Deviate(random) * left.Lights * sky.StandardUncertainty / sky.Value);   // a sky stays above 0
            if (reader.Draw(random, left) is { } model) models.Add((model, s));
        }
        double?[][] drawn = new double?[models.Count][];                    // each draw in its own slot: the same at any thread count
        Parallel.For(0, drawn.Length, i => drawn[i] = decide(models[i].Model, models[i].Sky));
        int width = drawn.Length == 0 ? decide(reader.Best, sky.Value).Length : drawn[0].Length;
        return [.. Enumerable.Range(0, width).Select(i => Of([.. drawn.Select(d => d[i])]))];
    }

    private static Spread Of(double?[] values)
    {
        double[] solved = [.. values.OfType<double>().Where(double.IsFinite).Order()];
        double share = (double)solved.Length / Draws;
        if (solved.Length < 10) return new Spread(0, null, null, share);
        bool whole = share >= 0.975;
        return new Spread((At(solved, 0.84134) - At(solved, 0.15866)) / 2,
            whole ? At(solved, 0.025) : null, whole ? At(solved, 0.975) : null, share);
    }

    private static double At(double[] sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int low = (int)place;
        return low + 1 < sorted.Length ? sorted[low] + (place - low) * (sorted[low + 1] - sorted[low]) : sorted[^1];
    }
}
