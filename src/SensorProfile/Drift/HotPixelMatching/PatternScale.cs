using SensorProfile.Drift.Archive;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>
/// The factor by which the dark rates of ordinary pixels grew between two sessions, measured pixel by pixel.
/// </summary>
/// <remarks>
/// Ordinary pixels differ by a fixed pattern. Growing dark current makes that pattern grow by the same factor; a
/// jittering black level, the largest error of a level, moves all pixels alike and cancels here. Within blocks of 32 ×
/// 32 px (so that glow cancels too) the variances V₁, V₂ and the covariance C of the two maps give the factor s by
/// Deming regression, which allows for noise in both: V₂ − r·V₁ = C·(s − r/s), r the ratio of the noise variances
/// (Deming 1943, Statistical Adjustment of Data; Fuller 1987, Measurement Error Models). The statistical uncertainty is
/// the delete-one jackknife over 32 groups of blocks; an uncertainty of 1 % in r is added.
/// </remarks>
internal static class PatternScale
{
    private const int Block = 32,
        MinInBlock = 128,
        Groups = 32;

    // robust standard deviations: a pixel farther out is not an ordinary one
    private const double Outlying = 4;

    // systematic part: maps of four simulated nights, with a third night as instrument, agree to this
    private const double NoiseRatioDoubt = 0.01;

    // pattern variance over noise variance: below it the pattern is not resolved
    private const double MinPattern = 0.2;

    /// <summary>
    /// The factor, last over first; null when the pattern of ordinary pixels was not kept or does not rise above the
    /// noise.
    /// </summary>
    public static Measurement? Measure(PixelRates first, PixelRates last)
    {
        if (!first.HoldsOrdinary || !last.HoldsOrdinary || first.Width != last.Width || first.Height != last.Height)
            return null;
        if (NoiseRatio(first, last) is not { } noise)
            return null;
        (double firstLimit, double lastLimit) = (Outlying * noise.FirstSpread, Outlying * noise.LastSpread);
        var groups = new Sums[Groups];
        int block = 0;
        for (int y = 0; y < first.Height; y += Block)
        for (int x = 0; x < first.Width; x += Block)
            groups[block++ % Groups] += OfBlock(first, last, x, y, firstLimit, lastLimit);
        Sums all = groups.Aggregate((a, b) => a + b);
        if (Solve(all, noise.Ratio) is not { } scale)
            return null;
        double pattern = all.Product / scale,
            ownNoise = all.First - pattern;
        if (!(pattern > MinPattern * ownNoise))
            return null;
        double[] without = [.. groups.Where(g => g.Pixels > 0).Select(g => Solve(all - g, noise.Ratio) ?? scale)];
        if (without.Length < Groups / 2)
            return null;
        double jackknife = Math.Sqrt(
            (without.Length - 1.0) / without.Length * without.Sum(s => (s - scale) * (s - scale))
        );
        double ofRatio = Math.Max(0, ownNoise) / (2 * pattern) * NoiseRatioDoubt * noise.Ratio;
        return new Measurement(
            scale,
            double.Hypot(jackknife, ofRatio),
            "1",
            all.Pixels,
            "common scale of the ordinary pixels' dark pattern, Deming line"
        );
    }

    /// <summary>Positive root of C·s² − (V₂ − r·V₁)·s − r·C = 0.</summary>
    private static double? Solve(Sums sums, double ratio)
    {
        if (!(sums.Product > 0))
            return null;
        double half = (sums.Last - ratio * sums.First) / (2 * sums.Product),
            s = half + Math.Sqrt(half * half + ratio);
        return double.IsFinite(s) && s > 0 ? s : null;
    }

    private static (double Ratio, double FirstSpread, double LastSpread)? NoiseRatio(PixelRates first, PixelRates last)
    {
        int[] sample = [.. first.Ordinary()!.Where(i => Usable(first, i) && Usable(last, i))];
        if (sample.Length < 500)
            return null;
        double ratio = OrderStatistics.Median([
            .. sample.Select(i => Square(last.At(i).Uncertainty / first.At(i).Uncertainty)),
        ]);
        double a = OrderStatistics.MadSigma([.. sample.Select(i => first.At(i).Rate)]),
            b = OrderStatistics.MadSigma([.. sample.Select(i => last.At(i).Rate)]);
        return ratio > 0 && double.IsFinite(ratio) && a > 0 && b > 0 ? (ratio, a, b) : null;
    }

    private static bool Usable(PixelRates rates, int index)
    {
        (double rate, double uncertainty) = rates.At(index);
        return double.IsFinite(rate) && uncertainty > 0 && !rates.Flickers(index);
    }

    private static Sums OfBlock(
        PixelRates first,
        PixelRates last,
        int left,
        int top,
        double firstLimit,
        double lastLimit
    )
    {
        List<double> a = [],
            b = [];
        for (int y = top; y < Math.Min(top + Block, first.Height); y++)
        for (int x = left; x < Math.Min(left + Block, first.Width); x++)
        {
            int i = y * first.Width + x;
            if (!Usable(first, i) || !Usable(last, i))
                continue;
            a.Add(first.At(i).Rate);
            b.Add(last.At(i).Rate);
        }
        if (a.Count < MinInBlock)
            return default;
        double[] u = [.. a],
            v = [.. b];
        double middleA = OrderStatistics.Median(u),
            middleB = OrderStatistics.Median(v);
        return Sums.About(u, v, i => Math.Abs(u[i] - middleA) < firstLimit && Math.Abs(v[i] - middleB) < lastLimit);
    }

    private static double Square(double x) => x * x;

    /// <summary>Sums of squares and products about the mean of each block.</summary>
    private readonly record struct Sums(double First, double Last, double Product, long Pixels)
    {
        public static Sums operator +(Sums a, Sums b) =>
            new(a.First + b.First, a.Last + b.Last, a.Product + b.Product, a.Pixels + b.Pixels);

        public static Sums operator -(Sums a, Sums b) =>
            new(a.First - b.First, a.Last - b.Last, a.Product - b.Product, a.Pixels - b.Pixels);

        public static Sums About(double[] u, double[] v, Func<int, bool> counts)
        {
            double meanU = 0,
                meanV = 0;
            long n = 0;
            for (int i = 0; i < u.Length; i++)
                if (counts(i))
                    (meanU, meanV, n) = (meanU + u[i], meanV + v[i], n + 1);
            if (n < 2)
                return default;
            (meanU, meanV) = (meanU / n, meanV / n);
            double first = 0,
                last = 0,
                product = 0;
            for (int i = 0; i < u.Length; i++)
            {
                if (!counts(i))
                    continue;
                (double du, double dv) = (u[i] - meanU, v[i] - meanV);
                (first, last, product) = (first + du * du, last + dv * dv, product + du * dv);
            }
            return new Sums(first, last, product, n);
        }
    }
}
