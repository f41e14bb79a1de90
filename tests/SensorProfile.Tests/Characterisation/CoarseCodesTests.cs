using SensorProfile.Fitting.Statistics;
using SensorProfile.PhotonTransfer;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Screening;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Characterisation;

/// <summary>Noise below one code: the camera of many electrons per code.</summary>
public sealed class CoarseCodesTests(ITestOutputHelper output)
{
    private const int Level = 100,
        Pixels = 10_000_000;

    /// <summary>
    /// Counts of a normal distribution rounded to whole codes, exact but for the rounding to whole pixels.
    /// </summary>
    private static IntegerHistogram Rounded(double mean, double sigma)
    {
        double Below(double x) => 1 - Probability.NormalTail((x - mean) / sigma);
        return new(
            0,
            [
                .. Enumerable
                    .Range(0, 2 * Level)
                    .Select(k => (long)Math.Round(Pixels * (Below(k + 0.5) - Below(k - 0.5)))),
            ]
        );
    }

    [Theory, InlineData(0.25), InlineData(0.35), InlineData(0.45), InlineData(0.6), InlineData(1.0), InlineData(3.0)]
    public void TheMedianOfNormalNoiseIsItsMeanWhereverItLiesInACode(double sigma)
    {
        // 1e7 pixels, shares rounded to 1e-7: only an edge 5 deviations away (0.25 codes of noise) is not known to
        // better than 0.005 codes.
        // Pixels spread evenly over the code, as it was once taken, put the median 0.04 codes off at 0.6 codes of noise
        // and 0.11 at 0.35.
        for (double mean = Level - 0.45; mean < Level + 0.5; mean += 0.09)
            Assert.Equal(mean, ChannelReading.GroupedMedian(Rounded(mean, sigma), 1), sigma < 0.3 ? 0.03 : 0.005);
    }

    [Fact]
    public void ACodeThatHoldsAllPixelsHasItsMiddleAsMedian() =>
        Assert.Equal(
            Level,
            ChannelReading.GroupedMedian(IntegerHistogram.Tally(Enumerable.Repeat(Level, 1000)), 4),
            1e-9
        );

    [Theory, InlineData(0.2), InlineData(0.3), InlineData(0.4), InlineData(0.5)]
    public void TheRoundingDoubtCoversWhatRoundingPutsTheLevelOff(double sigma)
    {
        double[] z =
        [
            .. Enumerable
                .Range(0, 50)
                .Select(i =>
                {
                    double mean = Level + i / 50.0;
                    IntegerHistogram codes = Rounded(mean, sigma);
                    return (codes.Mean - mean) / ReadNoise.LevelDoubtAdu(codes.Variance, 1);
                }),
        ];
        // computed with scipy too: 1.12, 0.70, 0.64 and 0.86
        Assert.InRange(Math.Sqrt(z.Average(v => v * v)), 0.6, 1.2);
        Assert.InRange(z.Max(Math.Abs), 0, 2.7);
        Assert.InRange(ReadNoise.LevelDoubtAdu(1 + 1.0 / 12, 1), 0, 1e-8);
    }

    [Theory, InlineData(0.15), InlineData(0.3), InlineData(0.45), InlineData(0.6)]
    public void CoarseCodesGiveNoFalseFindingAndHoldTheTruth(double codesOfNoise)
    {
        const double gain = 8;
        var camera = new CameraDescription
        {
            Name = "Tarn-9M",
            Width = 240,
            Height = 180,
            Gain = gain,
            ReadNoise = codesOfNoise * gain,
            BiasLevel = 100.3,
            Bits = 12,
            Serial = 5,
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = 0.1,
                ReferenceTemperature = -10,
                DoublingTemperature = 6,
            },
            DarkNonuniformity = 0.15,
            ResponseNonuniformity = 0.01,
            Shots = Nights.Full(3995 * gain, [-15, -10, -5, 0], [30, 100, 200, 300], darks: 4, bias: 10),
        };
        using var session = new SimulatedSession(camera, 17);
        CameraProfile profile = session.Characterise().Profile;
        foreach (Finding finding in profile.Findings)
            output.WriteLine($"{finding.Code}: {finding.Message}");
        Assert.Empty(
            profile
                .Findings.Select(f => f.Code)
                .Intersect([
                    "dark-not-linear",
                    "black-clipped",
                    "black-level-sets-differ",
                    "black-level-jumps",
                    "black-level-pinned",
                    "dark-forms-disagree",
                ])
        );
        DarkCurrentProfile dark = profile.Modes[0].DarkCurrent!;
        output.WriteLine(
            $"doubling {dark.DoublingTemperature!.Value:F3} ± {dark.DoublingTemperature.StandardUncertainty:F3}"
        );
        Assert.InRange(
            Math.Abs(dark.DoublingTemperature.Value - 6) / dark.DoublingTemperature.StandardUncertainty,
            0,
            4
        );
        foreach (DarkCurrentPoint point in dark.Points.Where(p => p.TypicalRate is not null))
        {
            double truth = 0.1 * Math.Pow(2, (point.Temperature + 10) / 6);
            output.WriteLine(
                $"{point.Temperature:F1} °C: {point.TypicalRate!.Value:F4} ± "
                    + $"{point.TypicalRate.StandardUncertainty:F4}, truth {truth:F4}"
            );
            Assert.InRange(Math.Abs(point.TypicalRate.Value - truth) / point.TypicalRate.StandardUncertainty, 0, 4);
        }
        // was 0.19: the rounding of the median was taken for a moving black level
        if (codesOfNoise >= 0.45)
            Assert.InRange(dark.DoublingTemperature.StandardUncertainty, 0, 0.06);
    }
}
