using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Truth;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.Thermometer;

/// <summary>Hot pixels: found, not invented, with their own laws.</summary>
public sealed class HotPixelTests(ITestOutputHelper output)
{
    [Fact]
    public void CompletenessAndPurityAgainstRate()
    {
        var night = new PatternNight(
            PatternNight.Camera(PatternNight.Shots(5, -10)) with
            {
                DarkNonuniformity = 0.2,
                HotPixels = new HotPixels
                {
                    Share = 0.03,
                    Distribution = new() { Minimum = 0.02, Maximum = 50 },
                },
            },
            3
        );
        PatternResult result = PatternMeasurement.Measure(
            night.Input() with
            {
                Thresholds = new DefectThresholds { HotRate = 0.2, WarmRate = 0.05 },
            },
            null
        )!;
        float[] truth = night.TrueRate();
        double typical = result.Maps.Typical;
        output.WriteLine("excess e-/px/s   true   found   complete   pure");
        foreach (double from in new[] { 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2 })
        {
            int[] real = [.. Enumerable.Range(0, truth.Length).Where(i => truth[i] - typical > from)];
            int[] found =
            [
                .. Enumerable
                    .Range(0, truth.Length)
                    .Where(i =>
                        result.Maps.Rate[i] - typical > from
                        && result.Maps.Rate[i] - typical > 6 * result.Maps.Uncertainty[i]
                    ),
            ];
            double complete = real.Length == 0 ? 1 : (double)real.Count(i => found.Contains(i)) / real.Length,
                pure = found.Length == 0 ? 1 : (double)found.Count(i => truth[i] - typical > 0.8 * from) / found.Length;
            output.WriteLine($"{from, 14} {real.Length, 6} {found.Length, 7} {complete, 10:0.000} {pure, 6:0.000}");
            // Uncertainty of a pixel 0.2 above the typical: 0.0046; the edge of the class costs a few per cent on
            // either side.
            if (from >= 0.2)
                Assert.InRange(complete, 0.94, 1);
            Assert.InRange(pure, 0.95, 1);
        }
        long hot = result.Defects.Counts.Hot,
            expected = truth.Count(t => t - typical > 0.2);
        Assert.InRange(hot, expected - 15, expected + 15);
    }

    [Fact]
    public void ACameraWithoutDefectsHasNone()
    {
        var night = new PatternNight(
            PatternNight.Camera(PatternNight.Shots(4, -10)) with
            {
                Width = 400,
                Height = 300,
            },
            5
        );
        PatternResult result = PatternMeasurement.Measure(
            night.Input() with
            {
                Thresholds = new DefectThresholds { HotRate = 0.002, WarmRate = 0.001 },
            },
            null
        )!;
        // 120000 pixels at 6 standard errors, one-sided: 1.2e-4 expected from normal noise. Noisy: 1e-6 each. 8-bit
        // classes otherwise empty.
        Assert.Equal(0, result.Defects.Counts.Hot + result.Defects.Counts.Warm);
        Assert.Equal(
            0,
            result.Defects.Counts.Flickering
                + result.Defects.Counts.NonLinear
                + result.Defects.Counts.Saturated
                + result.Defects.Counts.Cold
        );
        Assert.Equal(0, result.Defects.Counts.Columns + result.Defects.Counts.Rows + result.Defects.Counts.Clusters);
    }

    [Fact]
    public void EveryHotPixelHasItsOwnDoublingTemperature()
    {
        var night = new PatternNight(
            PatternNight.Camera(PatternNight.Shots(4, -20, -15, -10, -5)) with
            {
                HotPixels = new HotPixels
                {
                    Share = 0.02,
                    Activation = 0.8,
                    ActivationSpread = 0.1,
                    Distribution = new() { Minimum = 1, Maximum = 20 },
                },
            }
        );
        PatternResult result = night.Measure();
        float[] truth = TrueMaps.Doubling(night.Night.Sensor, -10, 300);
        TrueHotPixel[] hot = [.. night.Truth.HotPixels.Where(p => p.Rate > 2)];
        double[] ratio =
        [
            .. hot.Select(p => (p.Y - 1) * 160 + p.X - 1).Select(i => (double)result.Maps.Doubling![i] / truth[i]),
        ];
        Assert.DoesNotContain(ratio, double.IsNaN);
        Assert.InRange(ratio.Average(), 0.99, 1.01);
        Assert.InRange(ratio.Max(r => Math.Abs(r - 1)), 0, 0.08);
        DoublingByRate bright = result.Profile.DoublingByRate[^1];
        double median = 6.5 / 0.8;
        Assert.InRange(
            (bright.Doubling.Value - median) / Math.Sqrt(Math.Pow(bright.Doubling.StandardUncertainty, 2) + 0.01),
            -3.5,
            3.5
        );
        // 6.5/0.8²·0.1 = 1.0 °C; a class of some 60 pixels gives its spread to 15 %
        Assert.InRange(bright.Spread, 0.5, 1.6);
    }

    [Fact]
    public void TheCurveNeverRisesAndCountsAllAtTheBottom()
    {
        float[] rates = [0.1f, 0.3f, 0.3f, float.NaN, 2, 7];
        IReadOnlyList<HotPixelCount> curve = HotPixelCurve.Count(rates, [-1, 0.3f, 1, 10]);
        Assert.Equal([5, 2, 2, 0], curve.Select(c => c.Count));
        Assert.Equal(3.688879454, curve[^1].High, 8); // exact Poisson limit of no events (χ² form)
        Assert.Equal(0.242209279, curve[1].Low, 8);
    }
}
