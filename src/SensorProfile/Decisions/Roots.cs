namespace SensorProfile.Decisions;

/// <summary>Where a quantity that grows from the origin first reaches a limit.</summary>
internal static class Roots
{
    /// <summary>Smallest x in (0, <paramref name="end"/>] where <paramref name="load"/> exceeds 1; null when it never does.</summary>
    /// <remarks>Walks outwards in steps of a half so that the first crossing is found even when the load falls again, then bisects.</remarks>
    internal static double? FirstAboveOne(Func<double, double> load, double end)
    {
        double below = 0;
        for (double x = Math.Min(end, end * 1e-4); ; x = Math.Min(end, 1.5 * x))
        {
            if (load(x) > 1) return Between(load, below, x);
            below = x;
            if (x >= end) return null;
        }
    }

    private static double Between(Func<double, double> load, double below, double above)
    {
        for (int i = 0; i < 26; i++)
        {
            double middle = 0.5 * (below + above);
            if (load(middle) > 1) above = middle; else below = middle;
        }
        return 0.5 * (below + above);
    }
}
