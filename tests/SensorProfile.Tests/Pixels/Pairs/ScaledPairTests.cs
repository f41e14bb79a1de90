using SensorProfile.Pixels;
using SensorProfile.Pixels.Pairs;

namespace SensorProfile.Tests.Pixels.Pairs;

/// <summary>
/// Simulated flats: K = 0.5 ADU/e-, read noise 6 ADU, pedestal 400 ADU, shot noise normal with variance K·signal,
/// rounded to whole codes (+1/12 ADU²).
/// </summary>
public class ScaledPairTests
{
    private const double K = 0.5,
        ReadVariance = 36,
        Quantisation = 1 / 12.0;
    private const int Width = 80,
        Height = 60;
    private static readonly Measurement Read = new(ReadVariance + Quantisation, 0, "ADU²", 1, "known");

    [Theory, InlineData(false), InlineData(true)]
    public void TheGainAndItsUncertaintyHoldTheTruth(bool flicker)
    {
        double[] z =
        [
            .. Enumerable
                .Range(0, 250)
                .Select(seed =>
                {
                    RatioKind ratio = flicker ? RatioKind.RowByRow : RatioKind.WholeFrame;
                    Measurement gain = GainOfAPair.Of(Measure(seed, flicker, ratio), Read);
                    return (gain.Value - K) / gain.StandardUncertainty;
                }),
        ];
        Assert.InRange(z.Average(), -0.25, 0.25); // 4 standard errors of a mean of 250
        Assert.InRange(z.Average(v => v * v), 0.7, 1.36); // variance of z: 1 ± 4·√(2/250)
    }

    [Fact]
    public void ThePointOfThePhotonTransferCurveIsThatOfOneFrame()
    {
        var points = Enumerable.Range(0, 40).Select(seed => Measure(seed, flicker: true, RatioKind.RowByRow)).ToArray();
        double expected = K * points.Average(point => point.Signal) + ReadVariance + Quantisation;
        // 40 pairs of 4800: 0.32 % standard error
        Assert.Equal(expected, points.Average(point => point.TemporalVariance.Value), 0.015 * expected);
    }

    [Fact]
    public void FlickerShowsInTheRowRatiosAndRuinsASingleRatio()
    {
        var flickering = Measure(1, flicker: true, RatioKind.WholeFrame);
        Assert.True(flickering.RatioChiSquare > 10);
        Assert.True(GainOfAPair.Of(flickering, Read).Value > 3 * K);
        // 60 rows without flicker: χ²/ν = 1 ± 0.18 each, the mean of 30 pairs ± 0.034.
        Assert.Equal(
            1,
            Enumerable.Range(0, 30).Average(seed => Measure(seed, flicker: false, RatioKind.RowByRow).RatioChiSquare),
            0.15
        );
    }

    [Fact]
    public void HitsAndDeadPixelsAreLeftOutAndCounted()
    {
        var channel = Measure(3, flicker: false, RatioKind.RowByRow, (row, column) => (row, column) switch
            {
                (10, 10) => 30000,
                (20, 5) => -60000,
                _ => 0,
            });
        Assert.InRange(channel.Excluded, 2, 2);
        Assert.Equal(K, GainOfAPair.Of(channel, Read).Value, 0.05);
    }

    private static ScaledPairChannel Measure(
        int seed,
        bool flicker,
        RatioKind kind,
        Func<int, int, double>? defects = null
    )
    {
        var (a, b) = Frames(seed, flicker, defects ?? ((_, _) => 0));
        return ScaledPair.Measure(
            a,
            b,
            ColourMosaic.Monochrome,
            ChannelPedestals.Level(ColourMosaic.Monochrome, 400),
            kind
        )[0];
    }

    private static (MemorySamples A, MemorySamples B) Frames(int seed, bool flicker, Func<int, int, double> defects)
    {
        var noise = new NormalNoise(seed);
        double Code(double light) => 400 + light + noise.Next(Math.Sqrt(K * light + ReadVariance));
        double Light(int row, int column) => 8000 * (1 + 0.1 * Math.Sin(0.05 * (row + 2 * column)));
        return (
            MemorySamples.Of("a", Width, Height, (row, column) => Code(Light(row, column)) + defects(row, column)),
            MemorySamples.Of("b", Width, Height, (row, column) =>
                Code(Light(row, column) * (flicker ? 1 + 0.3 * Math.Sin(row / 5.0) : 1.03))
            )
        );
    }
}
