using SensorProfile.Pixels;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Tests.Pixels.Sums;

public class LineSumsTests
{
    [Fact]
    public void EveryLengthGivesTheSumsOfPlainAddition()
    {
        var random = new Random(5);
        for (int length = 0; length <= 257; length++)
        {
            ushort[] row = [.. Enumerable.Range(0, length).Select(_ => (ushort)random.Next(65536))];
            var (even, odd) = LineSumsTally.SumByParity(row);
            Assert.Equal(row.Where((_, i) => i % 2 == 0).Sum(x => (long)x), even);
            Assert.Equal(row.Where((_, i) => i % 2 == 1).Sum(x => (long)x), odd);
            var sums = Enumerable.Range(0, length).Select(i => (ulong)i).ToArray();
            LineSumsTally.AddTo(sums, row);
            Assert.Equal(row.Select((x, i) => (ulong)(x + i)), sums);
        }
    }

    [Fact]
    public void ARowTooLongForOneLaneToHoldIsSummedExactly()
    {
        var row = new ushort[65537 * 64 + 3];
        Array.Fill(row, ushort.MaxValue);
        var (even, odd) = LineSumsTally.SumByParity(row);
        Assert.Equal((row.Length + 1) / 2 * 65535L, even);
        Assert.Equal(row.Length / 2 * 65535L, odd);
    }

    [Theory, InlineData(7, 5), InlineData(1, 4), InlineData(4, 1), InlineData(64, 130)]
    public void ChannelsOfAMosaicGetTheirOwnLines(int width, int height)
    {
        var frame = MemorySamples.Of("f", width, height, (row, column) => 1000 * row + column);
        foreach (var mosaic in new[] { ColourMosaic.Monochrome, ColourMosaic.Of("RGGB") })
        {
            var statistics = FrameStatistics.Measure(frame, mosaic);
            for (int channel = 0; channel < mosaic.Channels; channel++)
            {
                var lines = statistics.Channels[channel].Lines;
                var pixels = Enumerable
                    .Range(0, width * height)
                    .Select(i => (Row: i / width, Column: i % width))
                    .Where(p => mosaic.Channel(p.Row, p.Column) == channel)
                    .ToLookup(p => p.Row / mosaic.Period, p => (long)frame.All[p.Row * width + p.Column]);
                Assert.Equal(
                    Enumerable.Range(0, mosaic.RowsOf(channel, height)).Select(row => pixels[row].Sum()),
                    lines.Rows
                );
                Assert.Equal(mosaic.ColumnsOf(channel, width), lines.Columns.Length);
                Assert.Equal(lines.Rows.Sum(), lines.Columns.Sum());
            }
            Assert.Equal(
                Enumerable
                    .Range(0, height)
                    .Select(row => frame.All.Skip(row * width).Take(width).Average(x => (double)x)),
                statistics.RowMeans()
            );
        }
    }
}
