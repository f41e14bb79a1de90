using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.Patches;

/// <summary>Draws the outline of a patch around its densest window.</summary>
internal static class PatchOutline
{
    private const double HeldShare = 0.9;

    /// <summary>The patch and the points that belong to it.</summary>
    public static (GrowingPatch Patch, HashSet<OutlinePoint> Inside) Around(
        ScanWindow window,
        IReadOnlyList<OutlinePoint> points,
        int width,
        int height,
        double p
    )
    {
        double margin = Math.Max(window.Width, window.Height) / 2.0;
        OutlinePoint[] near =
        [
            .. points.Where(q =>
                q.X > window.X - margin
                && q.X <= window.X + window.Width + margin
                && q.Y > window.Y - margin
                && q.Y <= window.Y + window.Height + margin
            ),
        ];
        OutlinePoint[] core = near;
        double x = 0,
            y = 0,
            radius = 0;
        for (int round = 0; round < 3; round++) // centre and radius settle together; stray points outside drop out
        {
            x = OrderStatistics.Median([.. core.Select(q => (double)q.X)]);
            y = OrderStatistics.Median([.. core.Select(q => (double)q.Y)]);
            radius = Math.Max(
                OrderStatistics.Quantile([.. core.Select(q => double.Hypot(q.X - x, q.Y - y))], HeldShare),
                1
            );
            OutlinePoint[] kept = [.. near.Where(q => double.Hypot(q.X - x, q.Y - y) <= 1.25 * radius)];
            if (kept.Length >= 3)
                core = kept;
        }
        double area = Math.PI * 1.5625 * radius * radius;
        int outside = points.Count - core.Length;
        double expected = outside * Math.Min(1, area / ((double)width * height));
        return (
            new GrowingPatch(x, y, radius, core.Length, expected, p, Where(x, y, width, height), Hull(core)),
            [.. core]
        );
    }

    /// <summary>
    /// "near the lower left corner", by thirds of the frame; the first row of the file is at the top, as everywhere in
    /// reports.
    /// </summary>
    internal static string Where(double x, double y, int width, int height)
    {
        string side = x < width / 3.0 ? "left"
            : x > width * 2 / 3.0 ? "right"
            : "",
            level = y < height / 3.0 ? "upper"
            : y > height * 2 / 3.0 ? "lower"
            : "";
        return (level, side) switch
        {
            ("", "") => "near the centre",
            ("", _) => $"near the {side} edge",
            (_, "") => $"near the {level} edge",
            _ => $"near the {level} {side} corner",
        };
    }

    /// <summary>Convex hull by the monotone chain (Andrew 1979, Inf. Process. Lett. 9, 216).</summary>
    internal static IReadOnlyList<OutlinePoint> Hull(IReadOnlyList<OutlinePoint> points)
    {
        OutlinePoint[] sorted = [.. points.Distinct().OrderBy(q => q.X).ThenBy(q => q.Y)];
        if (sorted.Length < 3)
            return sorted;
        List<OutlinePoint> lower = Chain(sorted),
            upper = Chain([.. sorted.Reverse()]);
        return [.. lower.SkipLast(1), .. upper.SkipLast(1)];
    }

    private static List<OutlinePoint> Chain(OutlinePoint[] sorted)
    {
        List<OutlinePoint> chain = [];
        foreach (OutlinePoint q in sorted)
        {
            while (chain.Count > 1 && Cross(chain[^2], chain[^1], q) <= 0)
                chain.RemoveAt(chain.Count - 1);
            chain.Add(q);
        }
        return chain;
    }

    private static long Cross(OutlinePoint a, OutlinePoint b, OutlinePoint c) =>
        (long)(b.X - a.X) * (c.Y - a.Y) - (long)(b.Y - a.Y) * (c.X - a.X);
}
