using SensorProfile.Profiles.Pattern;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// All pixels of a sensor in classes of equal dark rate, fine enough to resolve shares down to one in ten million;
/// where the sensor glows, one such set of classes for every strength of the glow.
/// </summary>
internal sealed class PixelPopulation
{
    private const int CoreClasses = 90; // shares 0 … 0.9

    // shares 0.9 … 1 − 1e-7: 0.99 and 0.999 are edges, so that "one in a thousand" is exact
    private const int ClassesPerDecade = 40;
    private const int TailDecades = 6;
    private const double Tail = 0.1; // share of the pixels in it
    private const int Merged = 5; // of these classes make one where only a small part of the sensor glows alike

    // a glowing part gets its own share of hot pixels only as far as it holds many more of them than this
    private const double PriorHotPixels = 20;

    // the same ranks for every sensor and every draw
    private static readonly Rank[] ranks = [.. Ranks()];
    private static readonly Rank[] coarseRanks = [.. Coarse(ranks)];

    // plain arrays, one entry per class: a population is built for every random draw
    private readonly double[] weights,
        middles, // thermal rates at the reference temperature, e-/px/s
        lows,
        highs,
        exponents; // each exponent of the classes once
    private readonly bool[] hot,
        outlying;
    private readonly int[] exponentOf, // of each class, its place among the exponents
        groupOf;
    private readonly int typicalExponents; // places that classes which are not hot use
    private IReadOnlyList<PixelClass>? classes; // made when first asked for

    private PixelPopulation(RankedPixels[] ranked, Population[] populations, double[] exponents, double glowsAbove)
    {
        this.exponents = exponents;
        int count = ranked.Sum(r => r.Count);
        (weights, middles, lows, highs) = (new double[count], new double[count], new double[count], new double[count]);
        (hot, outlying) = (new bool[count], new bool[count]);
        (exponentOf, groupOf) = (new int[count], new int[count]);
        var groups = new PixelGroup[ranked.Length];
        for (int g = 0, first = 0; g < groups.Length; first += ranked[g++].Count)
        {
            (RankedPixels own, Population population) = (ranked[g], populations[g]);
            own.Middles.CopyTo(middles, first);
            own.Lows.CopyTo(lows, first);
            own.Highs.CopyTo(highs, first);
            own.Hot.CopyTo(hot, first);
            own.ExponentOf.CopyTo(exponentOf, first);
            Array.Fill(groupOf, g, first, own.Count);
            for (int i = 0; i < own.Count; i++)
            {
                weights[first + i] = population.WeightOf(own, i);
                outlying[first + i] = own.Hot[i] || population.Glow > glowsAbove;
            }
            groups[g] = PixelGroup.Of(weights.AsSpan(first, own.Count), first, population.Share, population.Glow);
        }
        Groups = groups;
        // rejection needs the quartiles, even where they are hot
        typicalExponents = groups.Any(g => hot[g.LowerQuartile] || hot[g.Middle] || hot[g.UpperQuartile])
            ? exponents.Length
            : 1 + exponentOf.Where((_, i) => !hot[i]).Max();
    }

    /// <summary>The classes, group by group, slowest pixel of each first.</summary>
    internal IReadOnlyList<PixelClass> Classes =>
        classes ??= [
            .. weights.Select(
                (weight, i) =>
                    new PixelClass(weight, middles[i], exponents[exponentOf[i]], hot[i])
                    {
                        Glow = Groups[groupOf[i]].Glow,
                        Low = lows[i],
                        High = highs[i],
                    }
            ),
        ];

    /// <summary>Share of all pixels, class by class.</summary>
    internal ReadOnlySpan<double> Weights => weights;

    /// <summary>Whether the pixels count as hot, whatever the glow adds, class by class.</summary>
    internal ReadOnlySpan<bool> Hot => hot;

    /// <summary>Whether the pixels are hot or glow as strongly as a hot one, class by class.</summary>
    internal ReadOnlySpan<bool> Outlying => outlying;

    /// <summary>The parts of the sensor with uniform glow; a single one where nothing glows.</summary>
    internal IReadOnlyList<PixelGroup> Groups { get; }

    /// <summary>The group of every class.</summary>
    internal ReadOnlySpan<int> GroupOf => groupOf;

    /// <summary>
    /// Dark rates at another temperature, e-/px/s, as given by <see cref="PixelClass.RateAt(RateFactors)"/>, with each
    /// power computed only once.
    /// </summary>
    /// <param name="growth">Effect of the temperature.</param>
    /// <param name="withHotPixels">False skips what only hot pixels need: their rates are then undefined.</param>
    internal double[] RatesAt(RateFactors growth, bool withHotPixels = true)
    {
        double[] powers = Powers(growth, withHotPixels ? exponents.Length : typicalExponents),
            rates = new double[weights.Length];
        for (int i = 0; i < rates.Length; i++)
            if (exponentOf[i] < powers.Length)
                rates[i] = At(middles, i, growth, powers);
        return rates;
    }

    /// <summary>
    /// Share of the pixels whose rate exceeds a given one, e-/px/s; within a class, rates are spread evenly between its
    /// ends.
    /// </summary>
    internal double ShareAbove(double rate, RateFactors growth) =>
        ShareAbove(rate, growth, Powers(growth, exponents.Length));

    private double ShareAbove(double rate, RateFactors growth, double[] powers)
    {
        double share = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            double high = At(highs, i, growth, powers);
            if (!(high > rate))
                continue;
            double low = At(lows, i, growth, powers);
            share += weights[i] * (low >= rate ? 1 : (high - rate) / (high - low));
        }
        return share;
    }

    /// <summary>Rate that a share of the pixels does not exceed, e-/px/s.</summary>
    internal double RateOfRank(double share, RateFactors growth)
    {
        double[] powers = Powers(growth, exponents.Length);
        double low = double.PositiveInfinity,
            high = double.NegativeInfinity;
        for (int i = 0; i < weights.Length; i++)
        {
            low = Math.Min(low, At(lows, i, growth, powers));
            high = Math.Max(high, At(highs, i, growth, powers));
        }
        for (int i = 0; i < 60 && high - low > 1e-9 * Math.Abs(high); i++)
        {
            // rates span powers of ten
            double middle = low > 0 && high > 4 * low ? Math.Sqrt(low * high) : 0.5 * (low + high);
            if (ShareAbove(middle, growth, powers) > 1 - share)
                low = middle;
            else
                high = middle;
        }
        return high;
    }

    private double At(double[] rates, int i, RateFactors growth, double[] powers) =>
        PixelClass.At(rates[i], Groups[groupOf[i]].Glow, growth, powers[exponentOf[i]]);

    private double[] Powers(RateFactors growth, int count)
    {
        double[] powers = new double[count];
        for (int i = 0; i < count; i++)
            powers[i] = exponents[i] == 1 ? growth.Thermal : Math.Pow(growth.Own, exponents[i]);
        return powers;
    }

    /// <summary>The classes of a sensor.</summary>
    /// <param name="rates">Thermal rates by rank.</param>
    /// <param name="hotAbove">Rate above which a pixel is hot, e-/px/s.</param>
    /// <param name="laws">Laws by thermal rate.</param>
    /// <param name="glow">How strongly parts of the sensor glow; null or empty where nothing does.</param>
    internal static PixelPopulation Of(RateDistribution rates, double hotAbove, PixelLaws laws, GlowParts? glow = null)
    {
        GlowClass[] parts = glow is { Classes.Count: > 0 } ? [.. glow.Classes] : [new GlowClass(1, 0, 0)];
        double whole = parts.Sum(p => p.Share),
            widest = parts.Max(p => p.Share),
            usual = parts.Sum(p => p.Share / whole * p.HotShare);
        var exponents = new Dictionary<double, int>();
        RankedPixels fine = RankedPixels.Rank(ranks, rates, hotAbove, laws, exponents);
        RankedPixels? coarse = null;
        var ranked = new RankedPixels[parts.Length];
        var populations = new Population[parts.Length];
        for (int g = 0; g < parts.Length; g++)
        {
            GlowClass part = parts[g];
            double share = part.Share / whole,
                expected = usual * share * (glow?.Pixels ?? 0),
                found = part.HotShare * share * (glow?.Pixels ?? 0);
            ranked[g] =
                part.Share == widest
                    ? fine
                    : coarse ??= RankedPixels.Rank(coarseRanks, rates, hotAbove, laws, exponents);
            populations[g] = new Population(
                share,
                glow is null ? 0 : part.Rate * glow.Scale,
                (found + PriorHotPixels) / (expected + PriorHotPixels)
            ).Balanced(ranked[g].HotShare);
        }
        double[] powers = new double[exponents.Count];
        foreach ((double exponent, int place) in exponents)
            powers[place] = exponent;
        return new PixelPopulation(ranked, populations, powers, glow?.StrongAbove ?? double.PositiveInfinity);
    }

    /// <summary>A class of ranks: its share, and the normal scores of its middle and its ends.</summary>
    internal readonly record struct Rank(double Weight, double Score, double Low, double High);

    /// <summary>
    /// Part of the sensor: its share, its glow, and how many times as frequent hot and other pixels are there as on the
    /// whole sensor.
    /// </summary>
    private readonly record struct Population(double Share, double Glow, double Hot, double Other = 1)
    {
        /// <summary>Sets the frequency of the other pixels so that the shares add up to 1.</summary>
        internal Population Balanced(double hotShare) =>
            hotShare is > 0 and < 1
                ? this with
                {
                    Hot = Math.Min(Hot, 1 / hotShare),
                    Other = (1 - Math.Min(Hot, 1 / hotShare) * hotShare) / (1 - hotShare),
                }
                : this with
                {
                    Hot = 1,
                };

        internal double WeightOf(RankedPixels pixels, int i)
        {
            double weight = pixels.Weights[i] * Share * (pixels.Hot[i] ? Hot : Other);
            return pixels.Parts[i] == 1 ? weight : weight * pixels.Parts[i];
        }
    }

    private static IEnumerable<Rank> Ranks()
    {
        static double Score(double share) => RateDistribution.Score(share);
        for (int i = 0; i < CoreClasses; i++)
            yield return new(
                (1 - Tail) / CoreClasses,
                Score((1 - Tail) * (i + 0.5) / CoreClasses),
                Score((1 - Tail) * Math.Max(i, 0.05) / CoreClasses), // the slowest pixel of all has no score
                Score((1 - Tail) * (i + 1) / CoreClasses)
            );
        double outer = Tail;
        for (int i = 1; i <= TailDecades * ClassesPerDecade; i++)
        {
            double inner = Tail * Math.Pow(10, -(double)i / ClassesPerDecade);
            if (i == TailDecades * ClassesPerDecade)
                inner = 0;
            double share = 1 - Math.Sqrt(outer * Math.Max(inner, outer * 0.9));
            yield return new(outer - inner, Score(share), Score(1 - outer), Score(1 - Math.Max(inner, outer * 0.9)));
            outer = inner;
        }
    }

    private static IEnumerable<Rank> Coarse(Rank[] fine) =>
        fine.Chunk(Merged).Select(c => new Rank(c.Sum(r => r.Weight), c[c.Length / 2].Score, c[0].Low, c[^1].High));
}
