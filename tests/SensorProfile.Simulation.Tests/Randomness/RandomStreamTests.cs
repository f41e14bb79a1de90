using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Tests.Randomness;

public class RandomStreamTests
{
    [Fact]
    public void EveryPartOfTheKeyGivesAnotherStream()
    {
        ulong[] firsts =
        [
            RandomStream.For(1, Purpose.Row, 2, 3).Next(),
            RandomStream.For(2, Purpose.Row, 2, 3).Next(),
            RandomStream.For(1, Purpose.Columns, 2, 3).Next(),
            RandomStream.For(1, Purpose.Row, 3, 2).Next(),
            RandomStream.For(1, Purpose.Row, 2, 4).Next(),
            RandomStream.For(1, Purpose.Row, 3, 3).Next(),
        ];
        Assert.Equal(firsts.Length, firsts.Distinct().Count());
    }

    [Fact]
    public void TheSameKeyGivesTheSameStream()
    {
        var a = RandomStream.For(7, Purpose.Row, 1, 2);
        var b = RandomStream.For(7, Purpose.Row, 1, 2);
        for (int i = 0; i < 1000; i++)
        {
            Assert.Equal(a.Next(), b.Next());
        }
    }

    /// <summary>
    /// First numbers of neighbouring rows: correlation of 100 000 pairs has a standard error of 0.0032.
    /// </summary>
    [Fact]
    public void NeighbouringStreamsAreUncorrelated()
    {
        double sum = 0;
        for (int row = 0; row < 100_000; row++)
        {
            double a = RandomStream.For(1, Purpose.Row, 0, row).NextUniform() - 0.5;
            double b = RandomStream.For(1, Purpose.Row, 0, row + 1).NextUniform() - 0.5;
            sum += 12 * a * b;
        }
        Assert.InRange(sum / 100_000, -0.0127, 0.0127);
    }

    [Theory, InlineData(1), InlineData(7), InlineData(1000)]
    public void IndicesAreEven(int count)
    {
        var random = RandomStream.For(5, Purpose.Row);
        long[] counts = new long[count];
        for (int i = 0; i < 1000 * count; i++)
        {
            counts[random.NextIndex(count)]++;
        }
        Assert.All(counts, c => Assert.InRange(c, 850, 1150)); // 1000 ± 4.7·√1000
    }
}
