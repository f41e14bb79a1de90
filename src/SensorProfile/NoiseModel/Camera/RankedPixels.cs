namespace SensorProfile.NoiseModel.Camera;

/// <summary>The classes of one population before its glow and its share of hot pixels are known.</summary>
internal sealed class RankedPixels
{
    private RankedPixels(int capacity) =>
        (Weights, Parts, Middles, Lows, Highs, Hot, ExponentOf) = (
            new(capacity),
            new(capacity),
            new(capacity),
            new(capacity),
            new(capacity),
            new(capacity),
            new(capacity)
        );

    internal int Count => Weights.Count;

    /// <summary>Share of the pixels in the whole rank.</summary>
    internal List<double> Weights { get; }

    /// <summary>Part of the rank: 1, or the weight of one of its laws.</summary>
    internal List<double> Parts { get; }

    internal List<double> Middles { get; }

    internal List<double> Lows { get; }

    internal List<double> Highs { get; }

    internal List<bool> Hot { get; }

    internal List<int> ExponentOf { get; }

    internal double HotShare { get; private set; }

    internal static RankedPixels Rank(
        PixelPopulation.Rank[] ranks,
        RateDistribution rates,
        double hotAbove,
        PixelLaws laws,
        Dictionary<double, int> exponents
    )
    {
        var pixels = new RankedPixels(2 * ranks.Length);
        foreach (PixelPopulation.Rank rank in ranks)
        {
            double rate = rates.RateAtScore(rank.Score);
            (double doubling, double spread) = laws.At(rate);
            if (rate > hotAbove)
                pixels.HotShare += rank.Weight;
            void Add(double part, double law)
            {
                double exponent = laws.Typical / law;
                if (!exponents.TryGetValue(exponent, out int place))
                    exponents.Add(exponent, place = exponents.Count);
                pixels.Weights.Add(rank.Weight);
                pixels.Parts.Add(part);
                pixels.Middles.Add(rate);
                pixels.Lows.Add(rates.RateAtScore(rank.Low));
                pixels.Highs.Add(rates.RateAtScore(rank.High));
                pixels.Hot.Add(rate > hotAbove);
                pixels.ExponentOf.Add(place);
            }
            if (spread <= 0)
            {
                Add(1, doubling);
                continue;
            }
            // three-point Gauss–Hermite rule over the spread of laws
            double step = Math.Min(Math.Sqrt(3) * spread, 0.6 * doubling);
            Add(1 / 6.0, doubling - step);
            Add(2 / 3.0, doubling);
            Add(1 / 6.0, doubling + step);
        }
        return pixels;
    }
}
