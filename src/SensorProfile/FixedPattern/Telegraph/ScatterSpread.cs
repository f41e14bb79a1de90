using SensorProfile.Fitting.Statistics;

namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>Spread of the noise from pixel to pixel over sound pixels, from the bulk of all pixels.</summary>
/// <remarks>
/// ln(Q/ν) of a sound pixel scatters because pixels differ in noise (spread σ of ln variance) and because of counting
/// (χ² with ν degrees of freedom): σ² = (ln(q/q₅₀)/k)² − the same of χ²/ν, at k = 1 (84 %) or k = 2 (97.7 %), whichever
/// is larger: when shot noise, alike in all pixels, adds to the noise of single pixels, the upper tail is wider. The
/// limit L for a probability p solves ∫ φ(z)·P(χ² > ν·L·e^(−σz)/m) dz = p, m the median of Q/ν over that of χ²/ν.
/// </remarks>
/// <param name="Median">m.</param> <param name="Sigma">σ.</param>
internal readonly record struct ScatterSpread(double Median, double Sigma)
{
    private static readonly double[] shares = [0.841345, 0.977250]; // one and two standard deviations above the median
    private const double Bin = 0.01,
        Lowest = -4;
    private const int Bins = 800,
        Few = 200;

    /// <summary>Counts of ln(Q/ν) in narrow bins, empty.</summary>
    public static int[] Counts() => new int[Bins];

    /// <summary>Counts a pixel.</summary>
    public static void Count(int[] counts, double ratio)
    {
        if (ratio > 0)
            counts[Math.Clamp((int)((Math.Log(ratio) - Lowest) / Bin), 0, Bins - 1)]++;
    }

    /// <summary>Measures the spread from the counts of all strips; zero with fewer than 200 pixels.</summary>
    public static ScatterSpread Measure(IEnumerable<int[]> strips, int freedom)
    {
        long[] counts = new long[Bins];
        foreach (int[] strip in strips)
            for (int i = 0; i < Bins; i++)
                counts[i] += strip[i];
        long all = counts.Sum();
        if (all < Few || freedom < 1)
            return new(1, 0);
        double Quantile(double share)
        {
            double below = 0;
            for (int i = 0; i < Bins; i++)
            {
                if (below + counts[i] >= share * all)
                    return Lowest + Bin * (i + (share * all - below) / counts[i]);
                below += counts[i];
            }
            return 0;
        }
        double Chi(double share) => Math.Log(Probability.ChiSquaredQuantile(share, freedom) / freedom);
        double middle = Quantile(0.5),
            chance = Chi(0.5),
            square = shares
                .Select((share, i) => (Quantile(share) - middle, Chi(share) - chance, i + 1.0))
                .Max(d => (d.Item1 * d.Item1 - d.Item2 * d.Item2) / (d.Item3 * d.Item3));
        return new(Math.Exp(middle - chance), Math.Sqrt(Math.Max(0, square)));
    }

    /// <summary>Q/ν that a sound pixel exceeds with a given probability.</summary>
    public double Limit(double chance, int freedom)
    {
        double low = 0,
            high = Math.Log(1e4);
        for (int i = 0; i < 50; i++)
        {
            double middle = (low + high) / 2;
            if (Tail(Math.Exp(middle), freedom) > chance)
                low = middle;
            else
                high = middle;
        }
        return Math.Exp(high);
    }

    private double Tail(double limit, int freedom)
    {
        const double Range = 7,
            Step = 0.1;
        if (Sigma == 0)
            return Probability.ChiSquaredTail(freedom * limit / Median, freedom);
        double sum = 0;
        for (double z = -Range; z <= Range; z += Step)
            sum +=
                Math.Exp(-z * z / 2)
                * Probability.ChiSquaredTail(freedom * limit / Median * Math.Exp(-Sigma * z), freedom);
        return sum * Step / Math.Sqrt(2 * Math.PI);
    }
}
