using SensorProfile.Drift;
using SensorProfile.Drift.Archive;
using SensorProfile.Drift.Identity;
using SensorProfile.Drift.OverTheYears;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift.OverTheYears;

public sealed class ProbeCorrectionTests(ITestOutputHelper output)
{
    /// <summary>
    /// Seen: "The sensor has changed … Retake the darks" above "the probe drifted … no change of its own". Twenty
    /// cameras whose probe alone drifted by 0.98 °C; the chance of a false change is 5 % each, so more than three of
    /// twenty has a chance of 1.6 %.
    /// </summary>
    [Theory]
    [InlineData(-0.98)]
    [InlineData(0.98)]
    public void AProbeThatDriftedRulesVerdictAndAdvice(double celsius)
    {
        DriftAnswer[] answers =
        [
            .. Enumerable
                .Range(0, 20)
                .Select(i => new MappedYears(70 + i).Add(2031).Add(2034, probe: celsius).Compare()),
        ];
        output.WriteLine($"{answers[0].Outcome}, {answers[0].Probes.Single()}");
        DriftAnswer[] kept = [.. answers.Where(a => a.Outcome == DriftVerdict.Unchanged)];
        Assert.InRange(kept.Length, 17, 20);
        Assert.All(kept, a =>
        {
            Measurement step = a.Probes.Single().StepOfHotPixels!;
            Assert.InRange((step.Value - celsius) / step.StandardUncertainty, -3.5, 3.5);
            Assert.Equal(ProbeVerdict.Probe, a.Probes.Single().Verdict);
            Assert.Empty(a.Retake);
        });
        Assert.All(answers, a => Assert.NotEqual(ProbeVerdict.Ageing, a.Probes.Single().Verdict));
    }

    /// <summary>What is left once the probe's error is taken out is the ageing: 20 % by construction.</summary>
    [Fact]
    public void AgeingBesideADriftOfTheProbeIsStatedWithoutIt()
    {
        double[] z =
        [
            .. Enumerable
                .Range(0, 20)
                .Select(i =>
                {
                    DriftAnswer answer = new MappedYears(170 + i).Add(2031).Add(2034, 1.2, probe: 1).Compare();
                    Assert.Equal(DriftVerdict.Changed, answer.Outcome);
                    Assert.Equal(ProbeVerdict.Both, answer.Probes.Single().Verdict);
                    DriftChange byPixel = answer.Changes.Single(c => c.Quantity == "darkRateByPixel");
                    return (byPixel.To.Value - 1.2 * byPixel.From.Value) / byPixel.Change.StandardUncertainty;
                }),
        ];
        output.WriteLine(
            string.Join(" ", z.Select(v => v.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)))
        );
        Assert.InRange(z.Count(v => Math.Abs(v) < 2.58), 18, 20); // 99 %: three outside have a chance of 0.1 %
    }

    /// <summary>
    /// Seen: 26,700 hot pixels and 3 % more, which 0.25 °C gives where the number falls as r^−1.14. The temperature
    /// repeats to 0.05 °C: u = √(2/26700 + (1.14·(ln 2/6.6)·0.05·√2)² + …) = 1.3 % with the gains' 0.4 %.
    /// </summary>
    [Fact]
    public void CountsCarryTheirTemperature()
    {
        Assert.True(DriftTest.CountsP(26_700, 27_500) < 0.001);
        double doubt = double.Hypot(1.14 * Math.Log(2) / 6.6 * 0.05 * Math.Sqrt(2), 1.14 * 0.004 * Math.Sqrt(2));
        Assert.InRange(DriftTest.CountsP(26_700, 27_500, 1, doubt), 0.015, 0.04);
        // compared at one temperature nothing is left
        Assert.InRange(DriftTest.CountsP(26_700, 27_500, 1.03, doubt), 0.9, 1);
    }

    /// <summary>Without doubt the mean over the ratio is the exact test; the tails are those of the binomial.</summary>
    [Fact]
    public void TheTestOfCountsIsExactWithoutDoubt()
    {
        // P(K ≥ 8), K binomial with 10 and ½: 56/1024
        Assert.Equal(2 * 56 / 1024.0, DriftTest.CountsP(2, 8), 12);
        Assert.Equal(DriftTest.CountsP(40, 70), DriftTest.CountsP(40, 70, 1, 1e-6), 6);
        // P(K ≥ 2), K binomial with 3 and 2/3: 20/27
        Assert.Equal(Math.Min(1, 2 * Math.Min(20 / 27.0, 19 / 27.0)), DriftTest.CountsP(1, 2, 2), 12);
    }

    /// <summary>A capture program that turned its frames: the same answer, and a finding that names the turn.</summary>
    [Fact]
    public void MapsThatWereTurnedAreComparedAfterTurningBack()
    {
        var random = new Random(3);
        var sensor = new SyntheticMaps { Width = 160, Height = 128 };
        var tarn = new TarnYears { Width = 160, Height = 128 };
        ProfileOnDisk then = tarn.Measure(2031, random),
            now = tarn.Measure(2032, random);
        MapRates first = sensor.Measure(1),
            last = sensor.Measure(2);
        DriftAnswer Compare(PixelRates later) =>
            DriftComparison.Run(
                [then, now],
                (profile, _) => (profile == then ? first : later, null),
                new DriftOptions { Stack = null, Layouts = 99 }
            );
        var turned = new FrameAlignment(FrameOrientation.HalfTurn, 160, 128, 0, 0);
        DriftAnswer straight = Compare(last),
            back = Compare(AlignedRates.To(last, last, turned));
        Assert.Equal(straight.Outcome, back.Outcome);
        Assert.Equal(
            (straight.HotPixels!.Kept, straight.HotPixels.New, straight.HotPixels.Healed),
            (back.HotPixels!.Kept, back.HotPixels.New, back.HotPixels.Healed)
        );
        Assert.Contains(back.Findings, f =>
            f.Code == "maps-turned" && f.Message.Contains("rotated by 180°", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(straight.Findings, f => f.Code == "maps-turned");
    }
}
