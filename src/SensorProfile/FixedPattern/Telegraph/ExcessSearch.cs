namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>
/// Pixels that scatter by more than noise, signal and the spread of the noise over all pixels explain.
/// </summary>
/// <remarks>
/// The limit is the loosest of several probabilities p at which at most a twentieth of the pixels beyond it are
/// expected there by chance, N·p of N pixels (Benjamini and Hochberg 1995, J. R. Stat. Soc. B 57, 289: false discovery
/// rate), or the strictest if none qualifies. The number of pixels that flicker is at least that beyond the limit,
/// minus N·p and twice its square root.
/// </remarks>
/// <param name="Spread">Spread of the noise of sound pixels.</param>
/// <param name="Chance">Probability that a sound pixel is counted.</param>
/// <param name="ByChance">Sound pixels expected among those found.</param>
/// <param name="Pixels">The pixels found, by index.</param>
internal sealed record ExcessSearch(
    ScatterSpread Spread,
    double Chance,
    double ByChance,
    IReadOnlyDictionary<int, ExcessNoise> Pixels
)
{
    /// <summary>Probability that a sound pixel is measured; pixels with less scatter are skipped.</summary>
    public const double LoosestChance = 1e-3;

    private const double MaxFalse = 0.05;
    private static readonly double[] chances = [1e-6, 3e-6, 1e-5, 3e-5, 1e-4, 3e-4];

    private readonly Dictionary<int, double> limits = [];

    /// <summary>A search that found nothing.</summary>
    public static ExcessSearch None { get; } = new(new(1, 0), chances[0], 0, new Dictionary<int, ExcessNoise>());

    /// <summary>Decides which of the tested pixels count.</summary>
    /// <param name="spread">Spread of the noise of sound pixels.</param>
    /// <param name="tested">Pixels with excess scatter.</param>
    /// <param name="pixels">Number of pixels of the sensor.</param>
    public static ExcessSearch Judge(
        ScatterSpread spread,
        IEnumerable<(int Pixel, ExcessNoise Noise)> tested,
        int pixels
    )
    {
        (int Pixel, ExcessNoise Noise)[] all = [.. tested];
        ExcessSearch best = None;
        foreach (double chance in chances)
        {
            double byChance = chance * pixels;
            var search = new ExcessSearch(spread, chance, byChance, new Dictionary<int, ExcessNoise>());
            search = search with
            {
                Pixels = all.Where(t => t.Noise.Ratio > search.Limit(t.Noise.Freedom))
                    .ToDictionary(t => t.Pixel, t => t.Noise),
            };
            if (chance == chances[0] || byChance <= MaxFalse * search.Pixels.Count)
                best = search;
        }
        return best;
    }

    /// <summary>Q/ν above which a pixel counts.</summary>
    public double Limit(int freedom)
    {
        if (!limits.TryGetValue(freedom, out double limit))
            limits[freedom] = limit = Spread.Limit(Chance, freedom);
        return limit;
    }

    /// <summary>Minimum number of pixels that flicker, found here or by their levels.</summary>
    /// <param name="levelled">Pixels found by their levels.</param>
    public long AtLeast(IEnumerable<int> levelled) =>
        (long)Math.Max(0, Math.Floor(Pixels.Keys.Union(levelled).Count() - ByChance - 2 * Math.Sqrt(ByChance)));
}
