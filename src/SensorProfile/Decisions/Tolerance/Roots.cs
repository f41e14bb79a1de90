namespace SensorProfile.Decisions.Tolerance;

/// <summary>Where a quantity that grows from the origin first reaches a limit.</summary>
internal static class Roots
{
    /// <summary>
    /// Smallest x in (0, <paramref name="end"/>] where <paramref name="load"/> exceeds 1; null when it never does.
    /// </summary>
    /// <remarks>
    /// Walks outwards in steps of a half so that the first crossing is found even when the load falls again, then
    /// bisects.
    /// </remarks>
    internal static double? FirstAboveOne(Func<double, double> load, double end)
    {
        double below = 0;
        for (double x = Math.Min(end, end * 1e-4); ; x = Math.Min(end, 1.5 * x))
        {
            if (load(x) > 1)
                return Between(load, below, x);
            below = x;
            if (x >= end)
                return null;
        }
    }

    /// <summary>
    /// The same when the answer is expected near a value: three tries around it, and the walk only where they fail.
    /// </summary>
    /// <remarks>
    /// For the many random draws of one question, whose answers lie close together. A bracket of ±40 % halved 14 times
    /// is good to 5·10⁻⁵ of the answer.
    /// </remarks>
    internal static double? FirstAboveOne(Func<double, double> load, double end, double? near)
    {
        if (near is not double x || load(x / 1.4) > 1 || 1.4 * x >= end || load(1.4 * x) <= 1)
            return FirstAboveOne(load, end);
        return Between(load, x / 1.4, 1.4 * x, 14);
    }

    private static double Between(Func<double, double> load, double below, double above, int halvings = 26)
    {
        for (int i = 0; i < halvings; i++)
        {
            double middle = 0.5 * (below + above);
            if (load(middle) > 1)
                above = middle;
            else
                below = middle;
        }
        return 0.5 * (below + above);
    }
}
