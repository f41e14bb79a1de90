using SensorProfile.PhotonTransfer;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Screening;

namespace SensorProfile.Tests.PhotonTransfer.Channels;

public sealed class ChannelAgreementTests
{
    /// <summary>
    /// Four colours of one sensor, 2 e-/ADU, whose variance is 4.7 % too small at the top of the range (Astier et al.
    /// 2019, A&amp;A 629, A36):
    /// straight lines are off by as much, all alike.
    /// </summary>
    [Theory, InlineData(1), InlineData(3)]
    public void ACurvatureThatFewLevelsHideDoesNotAverageOutOverTheColours(int levels)
    {
        var log = new FindingsLog();
        GainFitResult[] fits = [.. Enumerable.Range(0, 4).Select(_ => Fit(levels, 1))];
        Measurement gain = ChannelAgreement.Gain(fits, log)!;
        Assert.Equal(fits[0].Gain.Value, gain.Value, 1e-9);
        Assert.Equal(fits[0].Gain.StandardUncertainty, gain.StandardUncertainty, 1e-9);
        Assert.InRange(Math.Abs(gain.Value - 2) / gain.StandardUncertainty, 0, 1.5);
        Assert.Empty(log.Findings);
    }

    /// <summary>
    /// One colour multiplied by 1.04: less than the hidden curvature may be, but that is the same in all colours.
    /// </summary>
    [Fact]
    public void AScaledColourIsFoundBehindACurvatureThatMayBeHidden()
    {
        var log = new FindingsLog();
        Assert.Null(ChannelAgreement.Gain([Fit(1, 1), Fit(1, 1), Fit(1, 1), Fit(1, 1.04)], log));
        Assert.Equal("channels-differ", Assert.Single(log.Findings).Code);
    }

    private static GainFitResult Fit(int levels, double scale) =>
        GainFit.Fit(
            [
                .. Enumerable
                    .Range(0, levels)
                    .Select(i => 10000.0 - 1000 * i)
                    .Select(signal =>
                        GainFitTests.Point(
                            scale * signal,
                            scale * scale * (GainFitTests.AstierVariance(signal) + 4),
                            pixels: 9_000_000
                        )
                    ),
            ],
            4 * scale * scale,
            4 * scale * scale * Math.Sqrt(2 / 9e6),
            saturationAdu: null
        )!;
}
