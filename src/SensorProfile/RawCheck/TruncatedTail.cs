using SensorProfile.Fitting.Statistics;

namespace SensorProfile.RawCheck;

/// <summary>An end of a distribution that is sharper than noise allows: something was cut off there.</summary>
/// <remarks>
/// A sample is what the pixel collected plus noise with a standard deviation of at least s. The density f of any
/// population of pixels, in any mixture of frames, exposures and temperatures, is therefore smeared by a Gaussian of
/// that width, and ln f + x²/(2s²) is convex. Given the counts n₁, n₂ of two adjacent windows of width d, every later
/// window at distance b from the second holds at least n₂·(n₂/n₁)^(b/d)·exp(−b(b + d)/(2s²)) pixels. (A sum of
/// exponentials exp(r·x/s²) with positive weights is log-convex; f·exp(x²/2s²) is one.) Even a natural population that
/// ends sharply at a largest rate obeys this; a limit applied to the stored values does not. Given the pixels' rates,
/// the counts in the windows scatter at most like Poisson counts and are independent from frame to frame.
/// </remarks>
/// <param name="Surroundings">What the excess is measured from.</param>
/// <param name="From">First bin of the window before the edge.</param>
/// <param name="At">First bin beyond the edge.</param>
/// <param name="To">Bin at which the windows beyond end.</param>
/// <param name="Before">Pixels in the window before.</param>
/// <param name="Beyond">Pixels beyond, in one to four windows.</param>
/// <param name="Expected">Minimum number of pixels there by the bound above.</param>
/// <param name="Chance">Probability of so few by chance, corrected for all the places searched.</param>
internal sealed record TruncatedTail(
    Surroundings Surroundings,
    int From,
    int At,
    int To,
    long Before,
    long Beyond,
    double Expected,
    double Chance
)
{
    // times the read noise: pixels differ, and the quieter ones make sharper ends
    private const double QuietShare = 0.85;

    // of the count that noise leaves beyond: codes of unequal width make windows uneven
    private const double CertainShare = 0.6;
    private const double DoubtSigmas = 3; // allowed for in the two counts that the bound rests on
    private const double MaxChance = 1e-6;
    private const int MinBefore = 30,
        WindowsBeyond = 4;
    private const double MissingPerFrame = 1.5; // a single stuck pixel shows in every frame

    /// <summary>The most certain edge; null when there is none.</summary>
    /// <param name="counts">Histogram of the excess.</param>
    /// <param name="noiseBins">Lowest read noise, in bins.</param>
    /// <param name="firstBin">First bin in which every pixel was counted.</param>
    /// <param name="endBin">First bin in which pixels may be saturated.</param>
    public static TruncatedTail? Find(ExcessCounts counts, double noiseBins, double firstBin, int endBin)
    {
        double s = QuietShare * noiseBins;
        int[] widths =
        [
            .. new[] { 0.5, 0.75, 1 }.Select(share => Math.Max(1, (int)Math.Round(share * noiseBins))).Distinct(),
        ];
        int places = 0;
        TruncatedTail? best = null;
        foreach (Surroundings surroundings in Enum.GetValues<Surroundings>())
        foreach (int d in widths)
        {
            ReadOnlySpan<int> pixels = counts.Of(surroundings);
            int end = Math.Min(endBin, pixels.Length - 1) - WindowsBeyond * d;
            for (int at = (int)Math.Ceiling(firstBin) + 2 * d; at < end; at++)
            {
                long second = Sum(pixels, at - d, d);
                if (second < MinBefore)
                    continue;
                for (int windows = 1; windows <= WindowsBeyond; windows++)
                {
                    places++;
                    if (
                        Judge(pixels, at, d, windows, s, second, MissingPerFrame * counts.Frames) is { } edge
                        && edge.Chance < (best?.Chance ?? 1)
                    )
                        best = edge with { Surroundings = surroundings };
                }
            }
        }
        return best is not null && best.Chance * places <= MaxChance
            ? best with
            {
                Chance = best.Chance * places,
            }
            : null;
    }

    private static TruncatedTail? Judge(
        ReadOnlySpan<int> pixels,
        int at,
        int d,
        int windows,
        double s,
        long second,
        double fewestMissing
    )
    {
        long first = Sum(pixels, at - 2 * d, d),
            beyond = Sum(pixels, at, windows * d);
        double ratio = Math.Min(1, (double)second / Math.Max(1, first)),
            expected = 0;
        for (int window = 1; window <= windows; window++)
        {
            // The relative error of n₂^(1 + w)/n₁^w, from those of the two counts.
            double b = window * d,
                doubt =
                    DoubtSigmas
                    * Math.Sqrt((1 + window) * (1 + window) / (double)second + window * window / Math.Max(1.0, first));
            expected += second * Math.Pow(ratio, window) * Math.Exp(-doubt - b * (b + d) / (2 * s * s));
        }
        expected *= CertainShare;
        return expected - beyond < fewestMissing
            ? null
            : new(
                default,
                at - d,
                at,
                at + windows * d,
                second,
                beyond,
                expected,
                Probability.PoissonAtMost(beyond, expected)
            );
    }

    private static long Sum(ReadOnlySpan<int> pixels, int from, int count)
    {
        long sum = 0;
        foreach (int n in pixels.Slice(from, count))
            sum += n;
        return sum;
    }
}
