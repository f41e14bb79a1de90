using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Counts of squares z² with 128 bins per octave, over the whole range of single precision; gives the clip on z.
/// </summary>
/// <remarks>
/// The bin of a number is the upper half of its single-precision bits: 0.8 % wide at most, 0.4 % in z.
/// </remarks>
internal sealed class SquareHistogram
{
    private readonly long[] _counts = new long[1 << 15];

    /// <summary>Counts one square.</summary>
    public void Add(double square) => _counts[BitConverter.SingleToUInt32Bits((float)square) >> 16]++;

    /// <summary>Combines several histograms.</summary>
    public static SquareHistogram Merge(IEnumerable<SquareHistogram> histograms)
    {
        var merged = new SquareHistogram();
        foreach (var histogram in histograms)
            for (int i = 0; i < merged._counts.Length; i++)
                merged._counts[i] += histogram._counts[i];
        return merged;
    }

    /// <summary>
    /// Largest z² that a clip at ±<paramref name="clip"/> standard deviations of z (mean 0) keeps, iterated until it
    /// settles.
    /// </summary>
    /// <remarks>
    /// The first width is robust: the median of z² is 0.4549 σ² for normal noise (the square of Φ⁻¹(3/4)).
    /// </remarks>
    public double Limit(double clip)
    {
        double variance = Median() * (OrderStatistics.MadToSigma * OrderStatistics.MadToSigma);
        int last = -1;
        for (int pass = 0; pass < 100; pass++)
        {
            int bin = (int)(BitConverter.SingleToUInt32Bits((float)(clip * clip * variance)) >> 16);
            if (bin == last)
                break;
            last = bin;
            double sum = 0;
            long count = 0;
            for (int i = 0; i <= bin; i++)
            {
                sum += _counts[i] * Centre(i);
                count += _counts[i];
            }
            variance = count == 0 ? 0 : sum / count;
        }
        return clip * clip * variance;
    }

    private double Median()
    {
        long half = (_counts.Sum() + 1) / 2;
        int bin = 0;
        for (long below = _counts[0]; below < half; below += _counts[bin])
            bin++;
        return Centre(bin);
    }

    private static double Centre(int bin) => BitConverter.UInt32BitsToSingle((uint)bin << 16 | 0x8000);
}
