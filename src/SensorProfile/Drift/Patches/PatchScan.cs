namespace SensorProfile.Drift.Patches;

/// <summary>Finds places where points lie closer together than chance allows.</summary>
/// <remarks>
/// Scan statistic of Kulldorff 1997 (Commun. Stat. Theory Methods 26, 1481): square windows of several sizes slide over
/// the sensor; the largest likelihood ratio n·ln(n/μ) + (N − n)·ln((N − n)/(N − μ)), μ = N·area share, n above μ, is
/// compared with the largest in random layouts of the same N points (Monte Carlo, seeded), which accounts for looking
/// everywhere. The points of a patch that was found are removed and the rest is scanned again.
/// </remarks>
internal static class PatchScan
{
    private const int CellsAcross = 48,
        MaxPatches = 4,
        MinPoints = 4;
    private const double Significant = 0.01,
        EulerGamma = 0.5772156649015329;

    /// <summary>The patches, most significant first.</summary>
    /// <param name="points">New hot pixels.</param>
    /// <param name="width">Width, px.</param>
    /// <param name="height">Height, px.</param>
    /// <param name="layouts">Number of random layouts.</param>
    /// <param name="seed">Seed of the layouts.</param>
    public static IReadOnlyList<GrowingPatch> Find(
        IReadOnlyList<OutlinePoint> points,
        int width,
        int height,
        int layouts,
        int seed
    )
    {
        List<GrowingPatch> found = [];
        List<OutlinePoint> rest = [.. points];
        var grid = new ScanGrid(width, height, Math.Max(1, (Math.Max(width, height) + CellsAcross - 1) / CellsAcross));
        while (found.Count < MaxPatches && rest.Count >= MinPoints)
        {
            ScanWindow best = grid.Densest(rest);
            double p = ChanceOf(best.Ratio, rest.Count, grid, layouts, seed);
            if (best.Count < MinPoints || p > Significant)
                break;
            (GrowingPatch patch, HashSet<OutlinePoint> inside) = PatchOutline.Around(best, rest, width, height, p);
            found.Add(patch);
            rest.RemoveAll(inside.Contains);
        }
        return found;
    }

    /// <summary>
    /// Share of random layouts that are as dense; where there is none, the tail of the Gumbel distribution that their
    /// maxima follow (Abrams, Kleinman and Kulldorff 2010, Int. J. Health Geogr. 9, 61), because a share of zero only
    /// says "fewer than one in so many".
    /// </summary>
    private static double ChanceOf(double ratio, int count, ScanGrid grid, int layouts, int seed)
    {
        var random = new Random(seed);
        var layout = new OutlinePoint[count];
        var ratios = new double[layouts];
        for (int i = 0; i < layouts; i++)
        {
            for (int k = 0; k < count; k++)
                layout[k] = new OutlinePoint(random.Next(grid.Width) + 1, random.Next(grid.Height) + 1);
            ratios[i] = grid.Densest(layout).Ratio;
        }
        int asDense = ratios.Count(r => r >= ratio);
        return asDense > 0 ? (asDense + 1.0) / (layouts + 1) : Math.Min(1.0 / (layouts + 1), GumbelTail(ratio, ratios));
    }

    private static double GumbelTail(double ratio, double[] maxima)
    {
        double mean = maxima.Average(),
            scale = Math.Sqrt(maxima.Sum(r => (r - mean) * (r - mean)) / (maxima.Length - 1) * 6) / Math.PI;
        double rare = Math.Exp(-(ratio - mean + EulerGamma * scale) / scale);
        return rare < 1e-6 ? rare : 1 - Math.Exp(-rare);
    }
}
