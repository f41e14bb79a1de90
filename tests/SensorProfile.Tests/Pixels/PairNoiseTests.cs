using SensorProfile.Pixels;
using SensorProfile.Pixels.Pairs;
using SensorProfile.RawCheck;

namespace SensorProfile.Tests.Pixels;

public class PairNoiseTests
{
    private const int Width = 64,
        Height = 96;

    [Theory, InlineData(2.0), InlineData(0.0)]
    public void RowNoiseAndItsUncertaintyHoldTheTruth(double rowNoise)
    {
        var found = Enumerable
            .Range(0, 200)
            .Select(seed =>
            {
                var noise = new NormalNoise(seed);
                return StructuredNoise.Measure(
                    PairStatistics
                        .Measure(Frame(noise, rowNoise), Frame(noise, rowNoise), ColourMosaic.Monochrome)
                        .Channels[0]
                );
            })
            .ToArray();
        double[] rows =
        [
            .. found.Select(noise =>
                (noise.RowVariance.Value - rowNoise * rowNoise) / noise.RowVariance.StandardUncertainty
            ),
        ];
        double[] columns =
        [
            .. found.Select(noise => noise.ColumnVariance.Value / noise.ColumnVariance.StandardUncertainty),
        ];
        foreach (double[] z in new[] { rows, columns })
        {
            // A variance on ν degrees of freedom over its own error √(2/ν): mean z −√(2/ν) = −0.18 (64 columns), mean
            // z² 1.16; 4 standard errors on either side.
            Assert.InRange(z.Average(), -0.18 - 0.31, -0.14 + 0.31);
            Assert.InRange(z.Average(v => v * v), 0.7, 1.65);
        }
    }

    [Fact]
    public void IndependentPixelsDoNotCorrelateEvenUnderRowNoise()
    {
        double[][] z =
        [
            .. Enumerable
                .Range(0, 150)
                .Select(seed =>
                {
                    var noise = new NormalNoise(seed);
                    var (a, b) = (Frame(noise, 3), Frame(noise, 3));
                    var found = NeighbourCorrelation.Measure(
                        a,
                        b,
                        PairStatistics.Measure(a, b, ColourMosaic.Monochrome)
                    )[0];
                    return new[] { found.AlongRow, found.AlongColumn, found.Diagonal }
                        .Select(lag => lag.Value / lag.StandardUncertainty)
                        .ToArray();
                }),
        ];
        for (int lag = 0; lag < 3; lag++)
        {
            Assert.InRange(z.Average(v => v[lag]), -0.33, 0.33); // 4 standard errors of a mean of 150
            Assert.InRange(z.Average(v => v[lag] * v[lag]), 0.6, 1.5);
        }
    }

    [Fact]
    public void SmoothingInTheCameraShowsAlongItsDirection()
    {
        // Each pixel averaged with its right-hand neighbour: correlation ½ along the row, 0 along the column.
        var noise = new NormalNoise(1);
        var (a, b) = (Smoothed(noise), Smoothed(noise));
        var found = NeighbourCorrelation.Measure(a, b, PairStatistics.Measure(a, b, ColourMosaic.Monochrome))[0];
        Assert.Equal(0.5, found.AlongRow.Value, 0.05);
        Assert.Equal(0, found.AlongColumn.Value, 0.06);

        static MemorySamples Smoothed(NormalNoise noise)
        {
            double[] raw = [.. Enumerable.Range(0, Width * Height + 1).Select(_ => noise.Next(20))];
            return MemorySamples.Of("s", Width, Height, (row, column) =>
                500 + (raw[row * Width + column] + raw[row * Width + column + 1]) / 2
            );
        }
    }

    private static MemorySamples Frame(NormalNoise noise, double rowNoise)
    {
        double[] rows = [.. Enumerable.Range(0, Height).Select(_ => noise.Next(rowNoise))];
        return MemorySamples.Of("f", Width, Height, (row, _) => 500 + rows[row] + noise.Next(8));
    }
}
