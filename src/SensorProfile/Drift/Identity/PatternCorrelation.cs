using SensorProfile.Drift.Archive;
using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.Identity;

/// <summary>Whether the ordinary pixels of two dark-rate maps show the same pattern.</summary>
/// <remarks>
/// r = Σ ab/√(Σ a²·Σ b²) over the pixels of blocks of 32 × 32 px, less the means of each block's rows and columns
/// (which removes glow along an edge and the rows and columns of the read-out) and without pixels beyond 4 robust
/// standard deviations. What all sensors of one model share (rows and columns of the read-out, pixels that share a
/// transistor) also correlates at shifts of two pixels: the mean of those correlations is subtracted. For two sensors
/// the rest is zero with a standard error of √(5/4n); for one sensor it is √((1 − u₁²/V₁)(1 − u₂²/V₂)), u the pixels'
/// noise and V their variance.
/// </remarks>
/// <param name="Excess">r less its mean at shifts of two pixels.</param>
/// <param name="Expected">Excess of one sensor whose pattern has not changed.</param>
/// <param name="StandardError">Standard error of the excess.</param>
internal sealed record PatternCorrelation(double Excess, double Expected, double StandardError)
{
    private const int Block = 32,
        MaxBlocks = 400,
        Step = 2,
        Sweeps = 3;
    private const double Outlying = 4;

    /// <summary>Compares two maps; null where ordinary pixels were not kept, or sizes differ.</summary>
    public static PatternCorrelation? Measure(PixelRates first, PixelRates last)
    {
        if (!first.HoldsOrdinary || !last.HoldsOrdinary || first.Width != last.Width || first.Height != last.Height)
            return null;
        (int X, int Y)[] blocks = [.. Blocks(first.Width, first.Height)];
        if (blocks.Length == 0)
            return null;
        Sums straight = Sum(first, last, blocks, 0, 0);
        (int X, int Y)[] shifts = [(Step, 0), (-Step, 0), (0, Step), (0, -Step)];
        double beside = shifts.Average(s => Sum(first, last, blocks, s.X, s.Y).Correlation);
        if (straight.Pixels < 1000 || !(straight.A > 0) || !(straight.B > 0))
            return null;
        double Reliability(double variance, double noise) => Math.Max(0, 1 - noise / variance);
        return new PatternCorrelation(
            straight.Correlation - beside,
            Math.Sqrt(
                Reliability(straight.A / straight.Freedom, straight.NoiseA / straight.Pixels)
                    * Reliability(straight.B / straight.Freedom, straight.NoiseB / straight.Pixels)
            ),
            Math.Sqrt(1.25 / straight.Freedom)
        );
    }

    private static IEnumerable<(int X, int Y)> Blocks(int width, int height)
    {
        int across = (width - 2 * Step) / Block,
            down = (height - 2 * Step) / Block,
            all = across * down,
            step = Math.Max(1, all / MaxBlocks) | 1;
        for (int i = 0; i < all; i += step)
            yield return (Step + i % across * Block, Step + i / across * Block);
    }

    private static Sums Sum(PixelRates first, PixelRates last, (int X, int Y)[] blocks, int dx, int dy) =>
        blocks.Aggregate(default(Sums), (sum, block) => sum + OfBlock(first, last, block.X, block.Y, dx, dy));

    private static Sums OfBlock(PixelRates first, PixelRates last, int left, int top, int dx, int dy)
    {
        List<double> a = [],
            b = [],
            ua = [],
            ub = [];
        List<int> places = [];
        for (int y = top; y < top + Block; y++)
        for (int x = left; x < left + Block; x++)
        {
            int i = y * first.Width + x,
                j = (y + dy) * last.Width + x + dx;
            ((double ra, double na), (double rb, double nb)) = (first.At(i), last.At(j));
            if (!(na > 0) || !(nb > 0) || !double.IsFinite(ra) || !double.IsFinite(rb))
                continue;
            a.Add(ra);
            b.Add(rb);
            ua.Add(na * na);
            ub.Add(nb * nb);
            places.Add((y - top) * Block + x - left);
        }
        if (a.Count < Block * Block / 4)
            return default;
        (double middleA, double reachA) = Reach(a);
        (double middleB, double reachB) = Reach(b);
        int[] ordinary =
        [
            .. Enumerable
                .Range(0, a.Count)
                .Where(i => Math.Abs(a[i] - middleA) < reachA && Math.Abs(b[i] - middleB) < reachB),
        ];
        if (ordinary.Length < 2)
            return default;
        int[] at = [.. ordinary.Select(i => places[i])];
        double[] flatA = WithoutLines([.. ordinary.Select(i => a[i])], at),
            flatB = WithoutLines([.. ordinary.Select(i => b[i])], at);
        Sums all = Enumerable
            .Range(0, at.Length)
            .Aggregate(default(Sums), (sum, i) =>
                sum
                + new Sums(
                    flatA[i] * flatA[i],
                    flatB[i] * flatB[i],
                    flatA[i] * flatB[i],
                    ua[ordinary[i]],
                    ub[ordinary[i]],
                    1,
                    0
                )
            );
        int lines = at.Select(p => p / Block).Distinct().Count() + at.Select(p => p % Block).Distinct().Count();
        return all with { Freedom = Math.Max(1, all.Pixels - lines + 1) };
    }

    /// <summary>
    /// Subtracts the means of rows and columns alternately, since missing pixels couple the two.
    /// </summary>
    private static double[] WithoutLines(double[] values, int[] places)
    {
        for (int sweep = 0; sweep < Sweeps; sweep++)
        {
            TakeOff(values, places, p => p / Block);
            TakeOff(values, places, p => p % Block);
        }
        return values;
    }

    private static void TakeOff(double[] values, int[] places, Func<int, int> line)
    {
        var sums = new double[Block];
        var counts = new int[Block];
        for (int i = 0; i < values.Length; i++)
        {
            sums[line(places[i])] += values[i];
            counts[line(places[i])]++;
        }
        for (int i = 0; i < values.Length; i++)
            values[i] -= sums[line(places[i])] / counts[line(places[i])];
    }

    private static (double Middle, double Reach) Reach(List<double> values)
    {
        double[] all = [.. values];
        return (OrderStatistics.Median(all), Outlying * OrderStatistics.MadSigma([.. values]));
    }

    private readonly record struct Sums(
        double A,
        double B,
        double Product,
        double NoiseA,
        double NoiseB,
        long Pixels,
        long Freedom
    )
    {
        public double Correlation => A > 0 && B > 0 ? Product / Math.Sqrt(A * B) : 0;

        public static Sums operator +(Sums a, Sums b) =>
            new(
                a.A + b.A,
                a.B + b.B,
                a.Product + b.Product,
                a.NoiseA + b.NoiseA,
                a.NoiseB + b.NoiseB,
                a.Pixels + b.Pixels,
                a.Freedom + b.Freedom
            );
    }
}
