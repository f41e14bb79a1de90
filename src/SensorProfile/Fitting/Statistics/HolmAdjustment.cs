namespace SensorProfile.Fitting.Statistics;

/// <summary>P-values adjusted for multiple tests (Holm 1979, Scand. J. Stat. 6, 65).</summary>
internal static class HolmAdjustment
{
    /// <summary>
    /// Adjusted p, in the given order: the running maximum of (m − rank)·p over ascending p, at most 1.
    /// </summary>
    public static double[] Adjust(ReadOnlySpan<double> probabilities)
    {
        double[] p = probabilities.ToArray();
        // stable: equal values keep their order
        int[] order = [.. Enumerable.Range(0, p.Length).OrderBy(i => p[i])];
        var adjusted = new double[p.Length];
        double least = 0;
        for (int rank = 0; rank < order.Length; rank++)
        {
            least = Math.Max(least, Math.Min(1, (p.Length - rank) * p[order[rank]]));
            adjusted[order[rank]] = least;
        }
        return adjusted;
    }
}
