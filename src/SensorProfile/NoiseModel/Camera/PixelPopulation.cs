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

    // the same ranks for every sensor and every draw
    private static readonly (double Weight, double Score)[] ranks = [.. Ranks()];

    private readonly PixelClass[] classes;
    private readonly double[] weights,
        exponents; // each exponent of the classes once, in the order of the classes
    private readonly bool[] hot;
    private readonly int[] exponentOf; // of each class, its place among the exponents
    private readonly int typicalExponents; // places that classes which are not hot use

    private PixelPopulation(PixelClass[] classes)
    {
        this.classes = classes;
        weights = [.. classes.Select(c => c.Weight)];
        hot = [.. classes.Select(c => c.Hot)];
        exponents = [.. classes.Select(c => c.LawExponent).Distinct()];
        var places = exponents.Index().ToDictionary(e => e.Item, e => e.Index);
        exponentOf = [.. classes.Select(c => places[c.LawExponent])];
        (LowerQuartile, Middle, UpperQuartile) = (AtShare(0.25), AtShare(0.5), AtShare(0.75));
        // rejection needs the quartiles, whatever they are
        typicalExponents =
            hot[LowerQuartile] || hot[Middle] || hot[UpperQuartile]
                ? exponents.Length
                : 1 + exponentOf.Where((_, i) => !hot[i]).Max();
    }

    /// <summary>The classes, slowest pixel first.</summary>
    internal IReadOnlyList<PixelClass> Classes => classes;

    /// <summary>Share of all pixels, class by class.</summary>
    internal ReadOnlySpan<double> Weights => weights;

    /// <summary>Whether the pixels count as hot, class by class.</summary>
    internal ReadOnlySpan<bool> Hot => hot;

    /// <summary>Class that a quarter of the pixels do not exceed.</summary>
    internal int LowerQuartile { get; }

    /// <summary>Class of the median pixel.</summary>
    internal int Middle { get; }

    /// <summary>Class that three quarters of the pixels do not exceed.</summary>
    internal int UpperQuartile { get; }

    /// <summary>
    /// Dark rates at another temperature, e-/px/s, as by <see cref="PixelClass.RateAt(Growth)"/>, but each power taken
    /// once.
    /// </summary>
    /// <param name="growth">What the temperature does.</param>
    /// <param name="withHotPixels">False leaves out what only hot pixels need: their rates are then undefined.</param>
    internal double[] RatesAt(Growth growth, bool withHotPixels = true)
    {
        double[] powers = new double[withHotPixels ? exponents.Length : typicalExponents],
            rates = GC.AllocateUninitializedArray<double>(classes.Length);
        for (int i = 0; i < powers.Length; i++)
            powers[i] = exponents[i] == 1 ? growth.Thermal : Math.Pow(growth.Thermal, exponents[i]);
        for (int i = 0; i < rates.Length; i++)
            if (exponentOf[i] < powers.Length)
                rates[i] = classes[i].RateAt(growth.Floor, powers[exponentOf[i]]);
        return rates;
    }

    private int AtShare(double share)
    {
        double below = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            below += weights[i];
            if (below >= share)
                return i;
        }
        return weights.Length - 1;
    }

    internal static PixelPopulation Of(RateDistribution rates, double hotAbove, PixelLaws laws)
    {
        var classes = new List<PixelClass>(ranks.Length);
        foreach ((double weight, double score) in ranks)
            Add(classes, weight, rates.RateAtScore(score), hotAbove, laws);
        return new PixelPopulation([.. classes]);
    }

    private static IEnumerable<(double Weight, double Score)> Ranks()
    {
        for (int i = 0; i < CoreClasses; i++)
            yield return ((1 - Tail) / CoreClasses, RateDistribution.Score((1 - Tail) * (i + 0.5) / CoreClasses));
        double outer = Tail;
        for (int i = 1; i <= TailDecades * ClassesPerDecade; i++)
        {
            double inner = Tail * Math.Pow(10, -(double)i / ClassesPerDecade);
            if (i == TailDecades * ClassesPerDecade)
                inner = 0;
            double share = 1 - Math.Sqrt(outer * Math.Max(inner, outer * 0.9));
            yield return (outer - inner, RateDistribution.Score(share));
            outer = inner;
        }
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
