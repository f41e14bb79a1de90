namespace SensorProfile.Decisions.Tolerance;

/// <summary>Where a quantity that grows from the origin first reaches a limit.</summary>
internal static class LimitCrossing
{
    // width of the last bracket, as a share of the answer
    private const double Exact = 5e-9,
        ForDraws = 5e-4; // a hundredth of the spread of the draws or less

    // between places this close together, a load is a power law to a thousandth
    private const double CloseTogether = 1.2;

    // a step predicted by a shape, or from the last two places, is right to a tenth of itself
    private const double LastStepByShape = 0.002,
        LastStep = 0.006;

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
    /// The same when the answer is expected near a value, or when none is expected: it walks only where that fails.
    /// </summary>
    /// <remarks>For the many random draws of one question, whose answers lie close together.</remarks>
    internal static double? FirstAboveOne(Func<double, double> load, double end, Expected? near)
    {
        if (near is not { } expected)
            return FirstAboveOne(load, end);
        if (expected.Crossing is not double x)
            return load(end) > 1 || load(0.3 * end) > 1 || load(0.1 * end) > 1 ? FirstAboveOne(load, end) : null;
        double here = load(x);
        if (!(here > 0) || !double.IsFinite(here))
            return FirstAboveOne(load, end);
        if (expected.Shape is { } shape && Following(load, end, (x, here), shape) is double followed)
            return followed;
        // past the crossing where the load grows faster than x^1.4, and never farther than 40 %
        double other = Math.Min(end, x * Math.Clamp(Math.Pow(here, -0.7), 1 / 1.4, 1.4)),
            there = load(other);
        if ((here > 1) == (there > 1))
        {
            other = Math.Min(end, here > 1 ? x / 1.4 : 1.4 * x);
            there = load(other);
        }
        if ((here > 1) == (there > 1))
            return here > 1 || other < end ? FirstAboveOne(load, end) : null;
        ((double X, double Load) below, (double X, double Load) above) =
            here > 1 ? ((other, there), (x, here)) : ((x, here), (other, there));
        return above.X < CloseTogether * below.X && below.Load > 0 && double.IsFinite(above.Load)
            ? OnPowerLaw(below, above)
            : Between(load, below, above, ForDraws);
    }

    /// <summary>What a search expects.</summary>
    /// <param name="Crossing">Where; null for no crossing.</param>
    /// <param name="Shape">How the load grows there; null when not known.</param>
    internal readonly record struct Expected(double? Crossing, LoadShape? Shape = null);

    /// <summary>
    /// Steps first to where the shape predicts, then along the straight line through the last two places, in
    /// logarithms; null when that does not converge.
    /// </summary>
    private static double? Following(
        Func<double, double> load,
        double end,
        (double X, double Load) last,
        LoadShape shape
    )
    {
        const int mostSteps = 4;
        double next = last.X * (shape.Crossing(last.Load) ?? 0),
            close = LastStepByShape;
        for (int step = 0; step < mostSteps && next > 0 && next < end; step++)
        {
            if (Math.Abs(next / last.X - 1) < close)
                return next;
            double there = load(next);
            if (!(there > 0) || !double.IsFinite(there))
                return null;
            double after = OnPowerLaw(last, (next, there));
            (last, next, close) = ((next, there), after, LastStep);
        }
        return null;
    }

    /// <summary>The crossing between two places, to a relative width.</summary>
    /// <remarks>
    /// Loads grow much like a power of the mismatch, so the crossing is sought on the straight line between both ends
    /// in logarithms, moved by a little less than the width wanted towards the farther end, so that the next one lies
    /// on its other side; a few tries are enough. Where they do not halve the bracket (a load in steps), it is
    /// bisected.
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
                double guess = OnPowerLaw(below, above);
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

    /// <summary>The crossing on the straight line between two places in logarithms.</summary>
    private static double OnPowerLaw((double X, double Load) below, (double X, double Load) above) =>
        below.X * Math.Pow(above.X / below.X, -Math.Log(below.Load) / Math.Log(above.Load / below.Load));
}
