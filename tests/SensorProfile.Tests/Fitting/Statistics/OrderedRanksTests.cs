using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Tests.Fitting.Statistics;

public class OrderedRanksTests
{
    // The slower way to the same numbers: a sorted copy.
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(5000)]
    public void EveryPlaceIsThatOfASortedCopy(int count)
    {
        var random = new Random(count);
        float[] values =
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                    (i % 5) switch
                    {
                        0 => (float)(random.NextDouble() - 0.5),
                        1 => -1e-30f * random.Next(9),
                        2 => random.Next(-3, 3),
                        3 => -0f,
                        _ => 1e20f * random.NextSingle(),
                    }
                ),
        ];
        float[] sorted = [.. values.Order()];
        long[] places = [.. Enumerable.Range(0, count).Select(i => (long)i)];
        Assert.Equal(sorted, OrderedRanks.Select(values, places));
        Assert.Equal([sorted[count - 1], sorted[0]], OrderedRanks.Select(values, [count - 1, 0]));
    }

    [Fact]
    public void NotANumberIsPassedOver()
    {
        float[] values = [3, float.NaN, float.PositiveInfinity, 1, float.NaN, float.NegativeInfinity];
        Assert.Equal(4, OrderedRanks.Count(values));
        Assert.Equal([float.NegativeInfinity, 1, 3, float.PositiveInfinity], OrderedRanks.Select(values, [0, 1, 2, 3]));
        Assert.Throws<ArgumentOutOfRangeException>(() => OrderedRanks.Select(values, [4]));
    }
}
