using SensorProfile.Pixels;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Tests.Pixels.Sums;

public class FrameStatisticsTests
{
    [Fact]
    public void ChannelsAreNamedByTheirColourInFileOrder()
    {
        Assert.Equal(["R", "G1", "G2", "B"], ColourMosaic.Of("RGGB").Names);
        Assert.Equal(["G1", "R", "B", "G2"], ColourMosaic.Of("GRBG").Names);
        Assert.Equal(["mono"], ColourMosaic.Of(null).Names);
        Assert.StartsWith(
            "'RGB' is not a 2 × 2 colour filter array; only four letters such as RGGB are understood.",
            Assert.Throws<ArgumentException>(() => ColourMosaic.Of("RGB")).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void EveryChannelCountsItsOwnPixelsAndTheSharesAtTheEnds()
    {
        // 5 × 3 pixels: channel 0 has 6, channel 1 has 4, channel 2 has 3, channel 3 has 2.
        var frame = MemorySamples.Of("f", 5, 3, (row, column) => (row % 2, column % 2) switch
            {
                (0, 0) => column == 0 ? 0 : 65535,
                (0, 1) => 7,
                (1, 0) => 9 + column,
                _ => 11,
            });
        var channels = FrameStatistics.Measure(frame, ColourMosaic.Of("RGGB")).Channels;
        Assert.Equal([6L, 4, 3, 2], channels.Select(channel => channel.Codes.Count));
        Assert.Equal((2 / 6.0, 4 / 6.0), (channels[0].Codes.ShareAt(0), channels[0].ShareAtTop));
        Assert.Equal(
            (11.0, 11.0, 9, 13),
            (channels[2].Codes.Median, channels[2].Codes.Mean, channels[2].Codes.Minimum, channels[2].Codes.Maximum)
        );
        Assert.Equal((7.0, 0.0), (channels[1].Clipped().Mean, channels[1].Clipped().Variance));
        Assert.Equal(15, FrameStatistics.Measure(frame, ColourMosaic.Of("RGGB")).AllCodes().Count);
    }
}
