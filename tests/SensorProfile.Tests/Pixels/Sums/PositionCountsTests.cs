using SensorProfile.Pixels;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Tests.Pixels.Sums;

public sealed class PositionCountsTests
{
    [Fact] // tables go back after a merge: what one frame counted must not show in the next
    public void TablesComeBackEmpty()
    {
        const int values = 1000; // of a size that no frame has
        for (int frame = 0; frame < 3; frame++)
        {
            PositionCounts[] tallies = [new(0, values), new(0, values)];
            tallies[0].Add(0, [5, 999, (ushort)(100 + frame)]);
            tallies[1].Add(1, [0, 7, 7]);
            IntegerHistogram codes = Assert.Single(PositionCounts.Merge(tallies, ColourMosaic.Monochrome, 0, values));
            Assert.Equal(6, codes.Count);
            Assert.Equal(5 + 999 + 100 + frame + 0 + 7 + 7, (long)codes.Sum);
            Assert.Equal((0, 999), (codes.Minimum, codes.Maximum));
        }
    }

    [Fact]
    public void TheHistogramReachesFromTheLeastToTheGreatest()
    {
        var tally = new PositionCounts(-500, 1001);
        tally.Add(0, [10, 20, 30], [13, 15, 30]); // differences −3, 5, 0
        IntegerHistogram differences = Assert.Single(
            PositionCounts.Merge([tally], ColourMosaic.Monochrome, -500, 1001)
        );
        Assert.Equal((-3, 5), (differences.Lowest, differences.Highest));
        Assert.Equal(
            (1L, 1L, 1L, 0L, 0L),
            (differences[-3], differences[0], differences[5], differences[1], differences[600])
        );
    }

    [Fact]
    public void NothingCountedIsAnEmptyHistogram() =>
        Assert.Equal(0, Assert.Single(PositionCounts.Merge([new(0, 77)], ColourMosaic.Monochrome, 0, 77)).Count);
}
