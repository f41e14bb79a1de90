namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// All pixels of a sensor in classes of equal dark rate, fine enough for shares down to one in ten million.
/// </summary>
internal sealed class PixelPopulation
{
    private const int CoreClasses = 90; // shares 0 … 0.9

    // shares 0.9 … 1 − 1e-7: 0.99 and 0.999 are edges, so that "one in a thousand" is exact
    private const int ClassesPerDecade = 40;
    private const int TailDecades = 6;
    private const double Tail = 0.1; // share of the pixels in it

    private PixelPopulation(IReadOnlyList<PixelClass> classes)
    {
        Classes = classes;
        (LowerQuartile, Middle, UpperQuartile) = (AtShare(0.25), AtShare(0.5), AtShare(0.75));
    }

    /// <summary>The classes, slowest pixel first.</summary>
    internal IReadOnlyList<PixelClass> Classes { get; }

    /// <summary>Class that a quarter of the pixels do not exceed.</summary>
    internal int LowerQuartile { get; }

    /// <summary>Class of the median pixel.</summary>
    internal int Middle { get; }

    /// <summary>Class that three quarters of the pixels do not exceed.</summary>
    internal int UpperQuartile { get; }

    private int AtShare(double share)
    {
        double below = 0;
        for (int i = 0; i < Classes.Count; i++)
        {
            below += Classes[i].Weight;
            if (below >= share)
                return i;
        }
        return Classes.Count - 1;
    }

    internal static PixelPopulation Of(RateDistribution rates, double hotAbove, PixelLaws laws)
    {
        var classes = new List<PixelClass>();
        for (int i = 0; i < CoreClasses; i++)
            Add(classes, (1 - Tail) / CoreClasses, rates.RateAt((1 - Tail) * (i + 0.5) / CoreClasses), hotAbove, laws);
        double outer = Tail;
        for (int i = 1; i <= TailDecades * ClassesPerDecade; i++)
        {
            double inner = Tail * Math.Pow(10, -(double)i / ClassesPerDecade);
            if (i == TailDecades * ClassesPerDecade)
                inner = 0;
            Add(
                classes,
                outer - inner,
                rates.RateAt(1 - Math.Sqrt(outer * Math.Max(inner, outer * 0.9))),
                hotAbove,
                laws
            );
            outer = inner;
        }
        return new PixelPopulation(classes);
    }

    private static void Add(List<PixelClass> classes, double weight, double rate, double hotAbove, PixelLaws laws)
    {
        bool hot = rate > hotAbove;
        (double doubling, double spread) = laws.Of(rate);
        if (spread <= 0)
        {
            classes.Add(new PixelClass(weight, rate, laws.Typical / doubling, hot));
            return;
        }
        // three-point Gauss–Hermite rule over the spread of laws
        double step = Math.Min(Math.Sqrt(3) * spread, 0.6 * doubling);
        classes.Add(new PixelClass(weight / 6, rate, laws.Typical / (doubling - step), hot));
        classes.Add(new PixelClass(weight * 2 / 3, rate, laws.Typical / doubling, hot));
        classes.Add(new PixelClass(weight / 6, rate, laws.Typical / (doubling + step), hot));
    }
}
