namespace SensorProfile.Fitting.Statistics;

/// <summary>Repeated rejection of values further than c·σ from the centre.</summary>
/// <remarks>
/// With mean and standard deviation nothing can be rejected among 10 values or fewer at 3σ: the largest possible |z| is
/// √(n − 1).
/// </remarks>
/// <param name="Kept">One flag per value, in the order given.</param>
/// <param name="Rejected">Number of values left out.</param>
/// <param name="Centre">Centre of the kept values, as asked for.</param>
/// <param name="Spread">Spread of the kept values, as asked for.</param>
/// <param name="Moments">Mean and variance of the kept values.</param>
internal sealed record SigmaClip(bool[] Kept, int Rejected, double Centre, double Spread, Moments Moments)
{
    /// <summary>Clips until nothing more is rejected or the passes are used up.</summary>
    public static SigmaClip Of(
        ReadOnlySpan<double> values,
        double sigma,
        ClipCentre centre = ClipCentre.Median,
        ClipSpread spread = ClipSpread.StandardDeviation,
        int passes = 5
    )
    {
        if (values.IsEmpty)
            throw new ArgumentException("There is nothing to clip.", nameof(values));
        var kept = new bool[values.Length];
        Array.Fill(kept, true);
        double[] remaining = values.ToArray();
        for (int pass = 0; pass < passes; pass++)
        {
            (double middle, double width) = Describe(remaining, centre, spread);
            for (int i = 0; i < kept.Length; i++)
                if (kept[i] && Math.Abs(values[i] - middle) > sigma * width)
                    kept[i] = false;
            int before = remaining.Length;
            remaining = Select(values, kept);
            if (remaining.Length == before)
                break;
        }
        (double finalCentre, double finalSpread) = Describe(remaining, centre, spread);
        return new SigmaClip(kept, values.Length - remaining.Length, finalCentre, finalSpread, Moments.Of(remaining));
    }

    private static (double Centre, double Spread) Describe(double[] values, ClipCentre centre, ClipSpread spread)
    {
        Moments moments = Moments.Of(values);
        return (
            centre == ClipCentre.Mean ? moments.Mean : OrderStatistics.Median(values),
            spread == ClipSpread.MadSigma ? OrderStatistics.MadSigma(values) : Math.Sqrt(moments.PopulationVariance)
        );
    }

    private static double[] Select(ReadOnlySpan<double> values, bool[] kept)
    {
        var selected = new List<double>(values.Length);
        for (int i = 0; i < kept.Length; i++)
            if (kept[i])
                selected.Add(values[i]);
        return [.. selected];
    }
}
