using SensorProfile.Fits.Tiles;

namespace SensorProfile.Fits.Tests.Tiles;

public sealed class DequantizerTests
{
    /// <summary>
    /// FITS 4.0 appendix I; the same generator is the minimal standard of ISO C++ (rand.predef), whose 10000th value
    /// the standard prints.
    /// </summary>
    [Fact]
    public void TheRandomGeneratorIsThatOfTheStandard()
    {
        var values = new List<long>();
        long seed = 1;
        for (int i = 0; i < Dequantizer.RandomCount; i++)
            values.Add(seed = Dequantizer.NextSeed(seed));
        Assert.Equal([16807, 282475249, 1622650073, 984943658, 1144108930], values[..5]);
        Assert.Equal(1043618065, values[^1]);
    }

    [Fact]
    public void WithoutDitherItIsAStraightLine()
    {
        var values = new double[3];
        Dequantizer.Decode([-2, 0, int.MinValue], values, 0.5, 10, int.MinValue, Dither.None, 0);
        Assert.Equal([9, 10, double.NaN], values);
    }

    /// <summary>
    /// The sequence of appendix I written down as it stands there: after 10 000 values the next start is taken, and the
    /// list of starts begins anew behind its last.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(17)]
    [InlineData(9_998)]
    [InlineData(9_999)]
    [InlineData(20_001)]
    public void TheDitherStartsAnewWhereTheStandardSaysSo(int seed)
    {
        double[] randoms = new double[10_000];
        double x = 1;
        for (int i = 0; i < randoms.Length; i++)
        {
            x = 16807.0 * x % 2147483647.0;
            randoms[i] = (float)(x / 2147483647.0);
        }
        var values = new double[35_000];
        Dequantizer.Decode(new int[values.Length], values, 1, 0, null, Dither.Subtractive, seed);
        int first = seed % 10_000,
            next = (int)(randoms[first] * 500);
        for (int i = 0; i < values.Length; i++)
        {
            Assert.Equal(0.5 - randoms[next], values[i]);
            next++;
            if (next == 10_000)
            {
                first++;
                if (first == 10_000)
                    first = 0;
                next = (int)(randoms[first] * 500);
            }
        }
    }

    [Fact]
    public void ExactZerosSurviveOnlyTheSecondKindOfDither()
    {
        var values = new double[1];
        Dequantizer.Decode([-2147483646], values, 1, 0, null, Dither.SubtractiveKeepsZero, 5);
        Assert.Equal(0, values[0]);
        Dequantizer.Decode([-2147483646], values, 1, 0, null, Dither.Subtractive, 5);
        Assert.NotEqual(0, values[0]);
    }
}
