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
