namespace SensorProfile.Decisions.Tolerance;

/// <summary>Where a quantity that grows from the origin first reaches a limit.</summary>
internal static class Roots
{
    // width of the last bracket, as a share of the answer
    private const double Exact = 5e-9,
        ForDraws = 5e-5;

    /// <summary>
    /// Smallest x in (0, <paramref name="end"/>] where <paramref name="load"/> exceeds 1; null when it never does.
    /// </summary>
    /// <remarks>
    /// Walks outwards in steps of a half so that the first crossing is found even when the load falls again, then
    /// closes in.
    /// </remarks>
    internal static double? FirstAboveOne(Func<double, double> load, double end)
    {
        double below = 0,
            loadBelow = 0;
        for (double x = Math.Min(end, end * 1e-4); ; x = Math.Min(end, 1.5 * x))
        {
            double here = load(x);
            if (here > 1)
                return Between(load, (below, loadBelow), (x, here), Exact);
            (below, loadBelow) = (x, here);
            if (x >= end)
                return null;
        }
    }

    /// <summary>
    /// The same when the answer is expected near a value: within ±40 % of it, and the walk only where that fails.
    /// </summary>
    /// <remarks>For the many random draws of one question, whose answers lie close together.</remarks>
    internal static double? FirstAboveOne(Func<double, double> load, double end, double? near)
    {
        if (near is not double x || 1.4 * x >= end)
            return FirstAboveOne(load, end);
        double low = load(x / 1.4);
        if (low > 1)
            return FirstAboveOne(load, end);
        double high = load(1.4 * x);
        return high > 1 ? Between(load, (x / 1.4, low), (1.4 * x, high), ForDraws) : FirstAboveOne(load, end);
    }

    /// <summary>The crossing between two places, to a share of itself.</summary>
    /// <remarks>
    /// Loads grow much like a power of the mismatch, so the crossing is looked for on the straight line between both
    /// ends in logarithms, moved by a little less than the width wanted towards the farther end so that the next one
    /// lies on its other side; a few tries are enough. Where they do not halve the bracket (a load in steps), it is
    /// halved.
    /// </remarks>
    private static double Between(
        Func<double, double> load,
        (double X, double Load) below,
        (double X, double Load) above,
        double share
    )
    {
        const int mostMisses = 4;
        for (int misses = 0; ; )
        {
            double width = above.X - below.X,
                wanted = share * above.X;
            if (width <= wanted)
                return 0.5 * (below.X + above.X);
            double x = 0.5 * (below.X + above.X);
            bool follows = misses < mostMisses && below is { X: > 0, Load: > 0 } && double.IsFinite(above.Load);
            if (follows)
            {
                double part = -Math.Log(below.Load) / Math.Log(above.Load / below.Load),
                    guess = below.X * Math.Pow(above.X / below.X, part);
                x = Math.Clamp(
                    guess + (guess < x ? 0.4 : -0.4) * wanted,
                    below.X + 0.1 * wanted,
                    above.X - 0.1 * wanted
                );
            }
            double here = load(x);
            if (here > 1)
                above = (x, here);
            else
                below = (x, here);
            if (follows && above.X - below.X > 0.5 * width)
                misses++;
        }
    }
}
