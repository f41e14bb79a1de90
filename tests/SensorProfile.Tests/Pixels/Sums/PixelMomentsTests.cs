using SensorProfile.Pixels.Pairs;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.RawCheck;

namespace SensorProfile.Tests.Pixels.Sums;

public class PixelMomentsTests
{
    [Theory, InlineData(2), InlineData(9), InlineData(24)]
    public void MomentsAreThoseOf128BitIntegers(int count)
    {
        // Quiet pixels, pixels that flip between the ends of the range, and everything between.
        var frames = Frames(count, 131, 37, seed: count);
        var moments = PixelMoments.Measure(frames);
        for (int i = 0; i < moments.Mean.Length; i++)
        {
            Int128 sum = 0,
                squares = 0;
            foreach (var frame in frames)
            {
                sum += frame.All[i];
                squares += (Int128)frame.All[i] * frame.All[i];
            }
            double variance = (double)(count * squares - sum * sum) / ((double)count * (count - 1));
            Assert.Equal((float)variance, moments.Variance[i]);
            // single precision at 65535: half a unit is 0.002
            Assert.Equal((double)sum / count, moments.Mean[i], 0.004);
        }
        Assert.Equal(moments.Mean, PixelMoments.MeanOf(frames));
    }

    [Fact]
    public void AnyThreadCountGivesTheSameBits()
    {
        var frames = Frames(11, 517, 301, seed: 1);
        var expected = PixelMoments.Measure(frames, new WalkOptions { Threads = 1 });
        var pair = PairStatistics.Measure(
            frames[0],
            frames[1],
            Lab.Positions,
            options: new WalkOptions { Threads = 1 }
        );
        var scaled = Scaled(1);
        foreach (int threads in new[] { 2, 3, 8, 64 })
        {
            var options = new WalkOptions { Threads = threads };
            var moments = PixelMoments.Measure(frames, options);
            Assert.Equal(expected.Mean, moments.Mean);
            Assert.Equal(expected.Variance, moments.Variance);
            Assert.Equal(
                pair.Channels.Select(c => (c.Clipped, c.TemporalVariance)),
                PairStatistics
                    .Measure(frames[0], frames[1], Lab.Positions, options: options)
                    .Channels.Select(c => (c.Clipped, c.TemporalVariance))
            );
            Assert.Equal(scaled, Scaled(threads));
            Assert.Equal(
                NeighbourCorrelation.Measure(frames[0], frames[1], pair, new WalkOptions { Threads = 1 }),
                NeighbourCorrelation.Measure(frames[0], frames[1], pair, options)
            );
        }

        (double, double, double)[] Scaled(int threads) =>
            [
                .. ScaledPair
                    .Measure(
                        frames[0],
                        frames[1],
                        Lab.Positions,
                        ChannelPedestals.Level(Lab.Positions, 5, 6, 7, 8),
                        RatioKind.RowByRow,
                        options: new WalkOptions { Threads = threads }
                    )
                    .Select(channel => (channel.SquaredDifferences, channel.Light, channel.RatioChiSquare)),
            ];
    }

    [Theory, InlineData(1), InlineData(3), InlineData(7)]
    public void MultiplyingEverySampleByAPowerOfTwoMultipliesTheMapsBitForBit(int power)
    {
        var frames = Frames(6, 64, 20, seed: 2, most: 511);
        var scaled = frames
            .Select(frame => new MemorySamples(frame.Name, 64, 20, [.. frame.All.Select(x => (ushort)(x << power))]))
            .ToArray();
        var (plain, times) = (PixelMoments.Measure(frames), PixelMoments.Measure(scaled));
        Assert.Equal(plain.Mean.Select(mean => mean * (1 << power)), times.Mean);
        Assert.Equal(plain.Variance.Select(variance => variance * (1 << 2 * power)), times.Variance);
    }

    [Fact]
    public void SeveralGroupsInOnePassGiveWhatEachGivesAlone()
    {
        var groups = new[] { 1, 2, 10 }.Select(count => Frames(count, 90, 45, seed: count)).ToArray();
        var means = groups.Select(_ => new float[90 * 45]).ToArray();
        var variances = groups.Select(_ => new float[90 * 45]).ToArray();
        GroupMoments.Walk(groups, strip =>
        {
            for (int group = 0; group < strip.Groups; group++)
                strip.CopyTo(group, means[group], variances[group]);
        });
        for (int group = 0; group < groups.Length; group++)
            Assert.Equal(PixelMoments.MeanOf(groups[group]), means[group]);
        Assert.All(variances[0], variance => Assert.True(float.IsNaN(variance))); // one frame has no variance
        Assert.Equal(PixelMoments.Measure(groups[1]).Variance, variances[1]);
        Assert.Equal(PixelMoments.Measure(groups[2]).Variance, variances[2]);
    }

    [Fact]
    public void WhatCannotBeMeasuredIsRefusedWithTheReason()
    {
        var frames = Frames(2, 8, 4, seed: 1);
        Assert.StartsWith(
            "1 frame(s) have no temporal variance; at least 2 are needed.",
            Assert.Throws<ArgumentException>(() => PixelMoments.Measure([frames[0]])).Message,
            StringComparison.Ordinal
        );
        var other = MemorySamples.Of("odd.fits", 9, 4, (_, _) => 0);
        Assert.StartsWith(
            "odd.fits is 9 × 4 px and f0 is 8 × 4 px; only frames of one size can be walked together.",
            Assert.Throws<ArgumentException>(() => PixelMoments.Measure([frames[0], other])).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() => PixelMoments.Measure([]));
    }

    private static MemorySamples[] Frames(int count, int width, int height, int seed, int most = 65535)
    {
        var random = new Random(seed);
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(k => MemorySamples.Of($"f{k}", width, height, (row, column) => (row + column)
                        % 5 switch
                        {
                            0 => random.Next(0, most + 1),
                            1 => random.Next(2) * most,
                            _ => most / 4 + random.Next(-20, 21),
                        })),
        ];
    }
}
