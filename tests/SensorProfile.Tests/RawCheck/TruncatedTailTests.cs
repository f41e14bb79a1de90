using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;
using SensorProfile.RawCheck;
using SensorProfile.Tests.Pixels;

namespace SensorProfile.Tests.RawCheck;

/// <summary>A limit set on stored values is found; the natural end of a population, however sharp, is not.</summary>
public class TruncatedTailTests
{
    private const int Size = 400;
    private const double Least = 3; // read noises, as the recipe counts them

    /// <summary>Frames of pixels with what they collect, ADU, times a factor, and noise of their own.</summary>
    private static IEnumerable<MemorySamples> Frames(
        int seed,
        double sigma,
        double hotShare,
        Func<Random, double> collected,
        params double[] factors
    )
    {
        var random = new Random(seed);
        double[] hot =
        [
            .. Enumerable.Range(0, Size * Size).Select(_ => random.NextDouble() < hotShare ? collected(random) : 0),
        ];
        // pixels differ in read noise by 15 %
        double[] noise = [.. hot.Select(_ => sigma * Math.Exp(0.15 * NormalNoise.Of(random)))];
        foreach (double factor in factors)
            yield return MemorySamples.Of("dark", Size, Size, (y, x) =>
                1000 + factor * hot[y * Size + x] + noise[y * Size + x] * NormalNoise.Of(random)
            );
    }

    private static TruncatedTail? Edge(IEnumerable<MemorySamples> frames, double sigma, int period = 1)
    {
        var counts = new ExcessCounts();
        ColourMosaic mosaic = period == 1 ? ColourMosaic.Monochrome : ColourMosaic.Of("RGGB");
        foreach (MemorySamples frame in frames)
            counts.Add(frame, mosaic, Least * sigma, 1, new WalkOptions());
        return TruncatedTail.Find(counts, sigma, 3.7 * sigma, 10_000);
    }

    /// <summary>Every sample more than a limit above a level of its neighbours takes that level.</summary>
    private static MemorySamples Replaced(
        MemorySamples frame,
        double limit,
        int reach,
        Func<int[], double> level,
        bool corners = true
    ) => MemorySamples.Of("treated", Size, Size, (y, x) =>
        {
            int own = frame.All[y * Size + x];
            if (y < reach || x < reach || y >= Size - reach || x >= Size - reach)
                return own;
            List<int> around = [];
            for (int dy = -reach; dy <= reach; dy++)
            for (int dx = -reach; dx <= reach; dx++)
                if ((dx != 0 || dy != 0) && (corners || dx == 0 || dy == 0))
                    around.Add(frame.All[(y + dy) * Size + x + dx]);
            double its = level([.. around.Order()]);
            return own > its + limit ? its : own;
        });

    private static double Median(int[] sorted) => (sorted[sorted.Length / 2 - 1] + sorted[sorted.Length / 2]) / 2.0;

    private static double PowerLaw(Random random) => 15 / Math.Max(1e-3, random.NextDouble());

    [Theory, InlineData(5), InlineData(1.3), InlineData(0.6), InlineData(20)]
    public void TheNaturalEndOfAPopulationIsNone(double sigma)
    {
        // A population all alike, one that ends at its largest rate, one with a gap, one that falls steeply; in one
        // exposure and in several.
        Func<Random, double>[] populations =
        [
            _ => 6 * sigma,
            _ => 12.5 * sigma,
            random => 10 * sigma * random.NextDouble(),
            random => 8 * sigma * Math.Sqrt(random.NextDouble()),
            random => random.NextDouble() < 0.5 ? 7 * sigma : 30 * sigma,
            random => -3 * sigma * Math.Log(1 - random.NextDouble()),
            random => sigma * PowerLaw(random),
        ];
        for (int i = 0; i < populations.Length; i++)
            foreach (double share in new[] { 0.004, 0.1 })
            foreach (double[] factors in new double[][] { [1, 1, 1, 1], [0.5, 1, 1, 2] })
                Assert.Null(Edge(Frames(11 + i, sigma, share, populations[i], factors), sigma));
    }

    [
        Theory,
        InlineData("median of eight", 25),
        InlineData("mean of eight", 25),
        InlineData("largest of eight", 25),
        InlineData("median of four", 40),
        InlineData("median of 24", 40)
    ]
    public void ALimitIsFoundWhateverItIsMeasuredFrom(string reference, double limit)
    {
        (int reach, bool corners, Func<int[], double> level) = reference switch
        {
            "median of eight" => (1, true, Median),
            "mean of eight" => (1, true, around => around.Average()),
            "largest of eight" => (1, true, around => around[^1]),
            "median of four" => (1, false, (Func<int[], double>)Median),
            _ => (2, true, Median),
        };
        // 1 % of the pixels are hot, 1600, half of them beyond 30 ADU; the noise is 5 ADU.
        TruncatedTail? edge = Edge(
            Frames(5, 5, 0.01, PowerLaw, [1, 1, 1, 1, 2, 2, 2, 2])
                .Select(f => Replaced(f, limit, reach, level, corners)),
            5
        );
        Assert.NotNull(edge);
        Assert.InRange(edge.At, limit - 2, limit + 3);
        Assert.InRange(edge.Beyond, 0, 0.5 * edge.Expected);
    }

    [Fact]
    public void OnePixelStuckInEveryFrameIsNone()
    {
        // Without noise of its own it is sharper than noise allows; forty frames show it forty times.
        Assert.Null(
            Edge(
                Frames(3, 5, 0, _ => 0, [.. Enumerable.Repeat(1.0, 40)])
                    .Select(f =>
                    {
                        f.All[Size * Size / 2 + 77] = 1040;
                        return f;
                    }),
                5
            )
        );
    }

    [Fact]
    public void TheCountsAreThoseOfTheDefinition()
    {
        MemorySamples frame = Frames(9, 5, 0.05, PowerLaw, 1).Single();
        var counts = new ExcessCounts();
        counts.Add(frame, ColourMosaic.Of("RGGB"), 10, 2, new WalkOptions { Threads = 3 });
        int[] expected = new int[ExcessCounts.Bins];
        for (int y = 4; y < Size - 4; y++)
        for (int x = 4; x < Size - 4; x++)
        {
            int[] around =
            [
                .. new[] { -2, 0, 2 }
                    .SelectMany(dy =>
                        new[] { -2, 0, 2 }
                            .Where(dx => dx != 0 || dy != 0)
                            .Select(dx => (int)frame.All[(y + dy) * Size + x + dx])
                    )
                    .Order(),
            ];
            double excess = frame.All[y * Size + x] - Median(around);
            if (excess >= 10)
                expected[(int)(excess / 2)]++;
        }
        Assert.Equal(expected, counts.Of(Surroundings.MedianOfEight).ToArray());
        Assert.Equal(expected.Skip(20).Sum(), counts.PerFrameFrom(20));
    }
}
