using SensorProfile.FixedPattern;
using SensorProfile.Frames;
using SensorProfile.Pixels;
using SensorProfile.Profiles;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters;
using SensorProfile.Tests.Pixels;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern;

/// <summary>Completeness and purity of the defect kinds against the size of the defect, on simulated truth. Hot pixels: <see cref="HotPixelTests"/>; flickering: <see cref="FlickeringPixelTests"/>.</summary>
public sealed class DefectCurvesTests(ITestOutputHelper output)
{
    private static readonly DefectThresholds thresholds = new() { HotRate = 0.2, WarmRate = 0.05 };

    private static PatternResult Measure(PatternNight night) => PatternMeasurement.Of(night.Input() with { Thresholds = thresholds }, null)!;

    [Fact]
    public void WarmPixelsAgainstTheirRate()
    {
        output.WriteLine("excess/threshold   true   found   complete   false");
        foreach (double size in new[] { 0.5, 0.8, 1.2, 1.6, 2, 3 })
        {
            double rate = size * thresholds.WarmRate;
            var night = new PatternNight(PatternNight.Camera(PatternNight.Shots(5, -10)) with { HotPixels = new HotPixels { Share = 0.01, Distribution = new() { Minimum = rate, Maximum = rate * 1.0001 } } }, 61);
            HashSet<int> real = [.. night.Truth.HotPixels.Select(p => (p.Y - 1) * 160 + p.X - 1)];
            int[] found = Of(Measure(night), DefectClass.Warm);
            double complete = Line(size, real, found);
            // Five darks each of 30, 120 and 300 s (5.5, 10 and 19 e-² and the excess' own): u = 0.012 e-/px/s, so 6 u = 0.073 is the limit that counts. Three thresholds lie 5.4 u above it, half
            // a threshold 3.9 u below.
            if (size >= 3) Assert.InRange(complete, 0.98, 1);
            if (size <= 0.5) Assert.InRange(complete, 0, 0.02);
            Assert.Equal(0, found.Count(i => !real.Contains(i)));
        }
    }

    [Fact]
    public void ColumnsAgainstTheirRate()
    {
        double least = thresholds.WarmRate / 4;
        output.WriteLine("excess/threshold   true   found   complete   false");
        foreach (double size in new[] { 0.25, 0.5, 1, 2, 4 })
        {
            var night = new PatternNight(PatternNight.Camera(PatternNight.Shots(5, -10)) with { BadColumns = new BadColumns { Count = 6, Rate = size * least } }, 62);
            HashSet<int> real = [.. night.Truth.BadColumns.Select(c => c.X - 1)];
            PatternResult result = Measure(night);
            double complete = Line(size, real, [.. result.Defects.Columns]);
            // The lowest quarter of every column is bad: the median of 30 pixels is good to 0.0013, a tenth of the threshold.
            if (size >= 2) Assert.Equal(1, complete);
            if (size <= 0.5) Assert.Empty(result.Defects.Columns);
            Assert.Equal(0, result.Defects.Columns.Count(c => !real.Contains(c)));
            Assert.Empty(result.Defects.Rows);
        }
    }

    [Fact]
    public void ColdAndDeadPixelsAgainstTheirResponse()
    {
        output.WriteLine("response   true   found   complete   false");
        foreach (double response in new[] { 0, 0.05, 0.2, 0.4, 0.45, 0.6, 0.9 })
        {
            var night = new PatternNight(PatternNight.Camera(new Shot { Kind = FrameKind.Bias, Count = 10 }, new Shot { Kind = FrameKind.Flat, Exposure = 1, Level = 8000, Count = 2 }) with
            {
                DeadPixels = new Simulation.Parameters.DeadPixels { Share = 0.005, Response = response }, Vignetting = 0.3, ResponseNonuniformity = 0.01,
            }, 63);
            HashSet<int> real = [.. night.Night.Sensor.Dead];
            DefectClass[] classes = SensorProfile.FixedPattern.DeadPixels.Find(PixelMoments.MeanOf(night.Of(FrameKind.Flat)), PixelMoments.Of(night.Of(FrameKind.Bias)).Mean, 500, 160, ColourMosaic.Of(null), thresholds.DeadResponse);
            int[] found = [.. Enumerable.Range(0, classes.Length).Where(i => classes[i] != DefectClass.None)];
            double complete = Line(response, real, found);
            // The threshold is 0.5; one flat's noise is 0.8 %, the pixels' own spread 1 %: the other values lie 5 and more deviations from it.
            if (response <= 0.45) Assert.InRange(complete, 0.98, 1);
            else Assert.Equal(0, complete);
            Assert.All(found, i => Assert.Equal(response < 0.1 ? DefectClass.Dead : DefectClass.Cold, classes[i]));
            Assert.Equal(0, found.Count(i => !real.Contains(i)));
        }
    }

    [Fact]
    public void SaturatedPixelsAgainstTheirRate()
    {
        // 65535 codes of 0.5 e- less a level of 500 are full after 300 s at 108.4 e-/px/s.
        const double Full = (65535 - 500) * 0.5 / 300;
        var night = new PatternNight(PatternNight.Camera(PatternNight.Shots(4, -10)) with { HotPixels = new HotPixels { Share = 0.01, Distribution = new() { Minimum = 20, Maximum = 500 } } }, 64);
        float[] truth = night.TrueRate();
        PixelFlags[] flags = Measure(night).Maps.Flags;
        output.WriteLine("rate/full   true   found");
        foreach ((double from, double to) in new[] { (0.2, 0.5), (0.5, 0.97), (1.03, 2), (2, 5) })
        {
            int[] real = [.. Enumerable.Range(0, truth.Length).Where(i => truth[i] > from * Full && truth[i] < to * Full)];
            int found = real.Count(i => flags[i].HasFlag(PixelFlags.Saturated));
            output.WriteLine($"{from:0.##}–{to:0.##} {real.Length,6} {found,6}");
            Assert.Equal(from > 1 ? real.Length : 0, found);
        }
    }

    [Fact]
    public void NonLinearPixelsAgainstTheirBend()
    {
        output.WriteLine("bend   true   found   complete   false");
        foreach (double bend in new[] { 0, 0.1, 0.2, 0.4, 0.6, 0.8 })
        {
            var night = new PatternNight(PatternNight.Camera(PatternNight.Shots(5, -10)), 65);
            int[] real = [.. Enumerable.Range(0, 100).Select(k => 100 + 190 * k)];
            foreach ((SimulatedFrame frame, IFrameSamples samples) in night.Night.Frames.Where(f => f.Kind == FrameKind.Dark).Zip(night.Of(FrameKind.Dark)))
                foreach (int i in real)
                    // 5 e-/px/s that fall off with time, 2 ADU per electron; the shot noise of so much is that of the simulated pixel and less than expected of a hot one.
                    ((MemorySamples)samples).All[i] += (ushort)Math.Round(10 * frame.ExposureSeconds * (1 - bend * frame.ExposureSeconds / 300));
            PixelFlags[] flags = Measure(night).Maps.Flags;
            int[] found = [.. Enumerable.Range(0, flags.Length).Where(i => flags[i].HasFlag(PixelFlags.NonLinear))];
            double complete = Line(bend, [.. real], found);
            if (bend >= 0.8) Assert.InRange(complete, 0.95, 1);
            if (bend == 0) Assert.Empty(found);
            Assert.Equal(0, found.Count(i => !real.Contains(i)));
        }
    }

    private static int[] Of(PatternResult result, DefectClass kind) => [.. Enumerable.Range(0, result.Defects.Classes.Length).Where(i => result.Defects.Classes[i].HasFlag(kind))];

    private double Line(double size, HashSet<int> real, int[] found)
    {
        double complete = (double)found.Count(real.Contains) / real.Count;
        output.WriteLine($"{size,10:0.##} {real.Count,6} {found.Length,7} {complete,10:0.000} {found.Count(i => !real.Contains(i)),7}");
        return complete;
    }
}
