using SensorProfile.Pixels;
using SensorProfile.Pixels.Sums;
using SensorProfile.Screening;
using SensorProfile.Tests.Pixels;

namespace SensorProfile.Tests.Screening;

public sealed class ChannelReadingTests
{
    // The pixels between the ranks of 40 and 60 % span (z₂ − z₁)·σ, and a normal distribution as dense has the width of that over
    // 0.2·√(2π). With a share w of the pixels far above, the ranks among the others are 0.4/(1 − w) and 0.6/(1 − w): of w = 0.3,
    // z = 0.1800 and 1.0676; of w = 0, ∓0.2533.
    [Theory]
    [InlineData(0.0, 12, 0.5067, 0.03)]
    [InlineData(0.3, 12, 0.8876, 0.03)]
    [InlineData(0.0, 1.5, 0.5067, 0.07)] // about one code
    public void TheSpreadAtTheMedianIsThatOfThePixelsThere(double farAway, double sigma, double width, double close)
    {
        const int side = 300;
        var random = new NormalNoise(5);
        ushort[] pixels =
        [
            .. Enumerable
                .Range(0, side * side)
                .Select(i => (ushort)Math.Round(i < farAway * side * side ? 3000 + i % 900 : 500 + random.Next(sigma))),
        ];
        FrameStatistics frame = FrameStatistics.Measure(
            new MemorySamples("frame", side, side, pixels),
            ColourMosaic.Monochrome
        );
        double expected = width * sigma / (0.2 * Math.Sqrt(2 * Math.PI));
        ChannelReading reading = ChannelReading.Measure(frame.Channels[0], 1);
        Assert.Equal(expected, reading.CoreSpread, close * expected);
    }
}
