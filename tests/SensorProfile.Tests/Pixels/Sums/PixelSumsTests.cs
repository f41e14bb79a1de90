using System.Numerics;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Tests.Pixels.Sums;

public class PixelSumsTests
{
    /// <summary>
    /// The build runs this suite with several switches of the runtime; this proves that a switch did what it says.
    /// </summary>
    [Fact]
    public void TheVectorWidthIsTheOneTheBuildAskedFor()
    {
        string lanes = Vector.IsHardwareAccelerated ? $"{Vector<ushort>.Count}" : "scalar";
        Assert.Equal(Environment.GetEnvironmentVariable("EXPECTED_LANES") ?? lanes, lanes);
    }

    [Theory, InlineData(1, 65535), InlineData(3, 40), InlineData(8, 65535), InlineData(8, 3000), InlineData(11, 30000)]
    public void EveryLengthGivesTheSumsOfTheDefinition(int frames, int range)
    {
        var random = new Random(1);
        for (int length = 0; length <= 257; length++)
        {
            ushort[] first = Codes(random, length, range),
                samples = Codes(random, length * frames, range);
            var (sums, squares) = (new int[length], new long[length]);
            var (scalarSums, scalarSquares) = (new int[length], new long[length]);
            PixelSums.Accumulate(samples, first, sums, squares);
            PixelSums.AccumulateScalar(samples, first, scalarSums, scalarSquares, 0, length);
            Assert.Equal(scalarSums, sums);
            Assert.Equal(scalarSquares, squares);
        }
    }

    [Fact]
    public void ExtremeSamplesAreSummedExactly()
    {
        // d = ±65535 in every frame: Σd² of 8 frames needs 35 bits, which the 32-bit lanes cannot hold.
        ushort[] first = [.. Enumerable.Range(0, 64).Select(i => (ushort)(i % 2 * 65535))];
        ushort[] opposite = [.. first.Select(x => (ushort)(65535 - x))];
        ushort[] samples = [.. Enumerable.Repeat(opposite, 8).SelectMany(x => x)];
        var (sums, squares) = (new int[64], new long[64]);
        PixelSums.Accumulate(samples, first, sums, squares);
        Assert.All(squares, square => Assert.Equal(8L * 65535 * 65535, square));
        Assert.Equal(Enumerable.Range(0, 64).Select(i => i % 2 == 0 ? 8 * 65535 : -8 * 65535), sums);
    }

    [Fact]
    public void SumsThatDoNotFitTogetherAreRefused()
    {
        var refused = Assert.Throws<ArgumentException>(() =>
            PixelSums.Accumulate(new ushort[5], new ushort[2], new int[2], new long[2])
        );
        Assert.StartsWith(
            "5 samples are not whole frames of 2 pixels with 2 and 2 sums.",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    [Theory, InlineData(2), InlineData(24), InlineData(1000), InlineData(32768)]
    public void MomentsAreThoseOfWholeNumbersOfAnySize(int frames)
    {
        var random = new Random(frames);
        for (int length = 0; length <= 257; length++)
        {
            // Sums that can occur: N values of d within ±range, range from tiny to the greatest, so that both paths of
            // the variance are taken.
            ushort[] first = Codes(random, length, 65535);
            int[] sums = new int[length];
            long[] squares = new long[length];
            for (int i = 0; i < length; i++)
            {
                long d = 1L << random.Next(0, 16),
                    away = random.Next(0, frames + 1);
                sums[i] = (int)(d * away * (i % 2 == 0 ? 1 : -1));
                squares[i] = d * d * away;
            }
            var (mean, variance) = (new float[length], new float[length]);
            PixelSums.Moments(first, sums, squares, frames, mean, variance);
            for (int i = 0; i < length; i++)
            {
                BigInteger numerator = (BigInteger)frames * squares[i] - (BigInteger)sums[i] * sums[i];
                Assert.Equal((float)((double)numerator / ((double)frames * (frames - 1))), variance[i]);
                Assert.Equal((float)(first[i] + (double)sums[i] / frames), mean[i]);
            }
        }
    }

    private static ushort[] Codes(Random random, int count, int range) =>
        [.. Enumerable.Range(0, count).Select(_ => (ushort)(random.Next(0, range + 1)))];
}
