using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.Frames;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Tests.FixedPattern.Thermometer;
using SensorProfile.Tests.Pixels;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.Defects;

/// <summary>
/// Completeness and purity of the defect kinds against the size of the defect, on simulated truth. Lines:
/// <see cref="RowsAndColumns.LineDefectCurvesTests"/>; clusters: <see cref="ClusterDefectCurvesTests"/>; hot pixels:
/// <see cref="HotPixelTests"/>; flickering: <see cref="Telegraph.FlickeringPixelTests"/>.
/// </summary>
public sealed class DefectCurvesTests(ITestOutputHelper output)
{
    private static readonly DefectThresholds thresholds = new() { HotRate = 0.2, WarmRate = 0.05 };

    private static PatternResult Measure(PatternNight night) =>
        PatternMeasurement.Measure(night.Input() with { Thresholds = thresholds }, null)!;

    [Fact]
    public void WarmPixelsAgainstTheirRate()
    {
        output.WriteLine(DefectCurve.Heading("excess/threshold"));
        foreach (double size in new[] { 0.5, 0.8, 1.2, 1.6, 2, 3 })
        {
            double rate = size * thresholds.WarmRate;
            var night = new PatternNight(
                PatternNight.Camera(PatternNight.Shots(5, -10)) with
                {
                    HotPixels = new HotPixels
                    {
                        Share = 0.01,
                        Distribution = new() { Minimum = rate, Maximum = rate * 1.0001 },
                    },
                },
                61
            );
            HashSet<int> real = [.. night.Truth.HotPixels.Select(p => (p.Y - 1) * 160 + p.X - 1)];
            int[] found = DefectCurve.Of(Measure(night), DefectClass.Warm);
            double complete = DefectCurve.Line(output, size, real, found);
            // Five darks each of 30, 120 and 300 s (5.5, 10 and 19 e-² and the excess' own): u = 0.012 e-/px/s, so 6 u
            // = 0.073 is the limit that counts. Three thresholds lie 5.4 u above it, half
            // a threshold 3.9 u below.
            if (size >= 3)
                Assert.InRange(complete, 0.98, 1);
            if (size <= 0.5)
                Assert.InRange(complete, 0, 0.02);
            Assert.Equal(0, found.Count(i => !real.Contains(i)));
        }
    }

    [Fact]
    public void ColdAndDeadPixelsAgainstTheirResponse()
    {
        output.WriteLine(DefectCurve.Heading("response"));
        foreach (double response in new[] { 0, 0.05, 0.2, 0.4, 0.45, 0.6, 0.9 })
        {
            var night = new PatternNight(
                PatternNight.Camera(
                    new Shot { Kind = FrameKind.Bias, Count = 10 },
                    new Shot
                    {
                        Kind = FrameKind.Flat,
                        Exposure = 1,
                        Level = 8000,
                        Count = 2,
                    }
                ) with
                {
                    DeadPixels = new Simulation.Parameters.Sensor.DeadPixels { Share = 0.005, Response = response },
                    Vignetting = 0.3,
                    ResponseNonuniformity = 0.01,
                },
                63
            );
            HashSet<int> real = [.. night.Night.Sensor.Dead];
            DefectClass[] classes = SensorProfile.FixedPattern.Defects.DeadPixelSearch.Find(
                PixelMoments.MeanOf(night.Of(FrameKind.Flat)),
                PixelMoments.Measure(night.Of(FrameKind.Bias)).Mean,
                500,
                160,
                ColourMosaic.Of(null),
                thresholds
            );
            int[] found = [.. Enumerable.Range(0, classes.Length).Where(i => classes[i] != DefectClass.None)];
            double complete = DefectCurve.Line(output, response, real, found);
            // The threshold is 0.5; one flat's noise is 0.8 %, the pixels' own spread 1 %: the other values lie 5 and
            // more deviations from it.
            if (response <= 0.45)
                Assert.InRange(complete, 0.98, 1);
            else
                Assert.Equal(0, complete);
            Assert.All(found, i => Assert.Equal(response < 0.1 ? DefectClass.Dead : DefectClass.Cold, classes[i]));
            Assert.Equal(0, found.Count(i => !real.Contains(i)));
        }
    }

    [Fact]
    public void SaturatedPixelsAgainstTheirRate()
    {
        // 65535 codes of 0.5 e- less a level of 500 are full after 300 s at 108.4 e-/px/s.
        const double Full = (65535 - 500) * 0.5 / 300;
        var night = new PatternNight(
            PatternNight.Camera(PatternNight.Shots(4, -10)) with
            {
                HotPixels = new HotPixels
                {
                    Share = 0.01,
                    Distribution = new() { Minimum = 20, Maximum = 500 },
                },
            },
            64
        );
        float[] truth = night.TrueRate();
        PixelFlags[] flags = Measure(night).Maps.Flags;
        output.WriteLine("rate/full   true   found");
        foreach ((double from, double to) in new[] { (0.2, 0.5), (0.5, 0.97), (1.03, 2), (2, 5) })
        {
            int[] real =
            [
                .. Enumerable.Range(0, truth.Length).Where(i => truth[i] > from * Full && truth[i] < to * Full),
            ];
            int found = real.Count(i => flags[i].HasFlag(PixelFlags.Saturated));
            output.WriteLine($"{from:0.##}–{to:0.##} {real.Length, 6} {found, 6}");
            Assert.Equal(from > 1 ? real.Length : 0, found);
        }
    }

    [Theory, InlineData(1.0), InlineData(5.0), InlineData(20.0)]
    public void NonLinearPixelsAgainstTheirBend(double rate)
    {
        output.WriteLine(
            $"{rate} e-/px/s, less a share (bend) of it that grows with the exposure and is reached at 300 s"
        );
        output.WriteLine(DefectCurve.Heading("bend") + "   complete by theory");
        foreach (double bend in new[] { 0, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9 })
        {
            var night = new PatternNight(PatternNight.Camera(PatternNight.Shots(5, -10)), 65);
            int[] real = [.. Enumerable.Range(0, 100).Select(k => 100 + 190 * k)];
            AddBent(night, real, rate, bend);
            PixelFlags[] flags = Measure(night).Maps.Flags;
            int[] found = [.. Enumerable.Range(0, flags.Length).Where(i => flags[i].HasFlag(PixelFlags.NonLinear))];
            (double least, double most) = Expected(rate, bend);
            double complete = DefectCurve.Line(
                output,
                bend,
                [.. real],
                found,
                FormattableString.Invariant($"{least:0.000} … {most:0.000}")
            );
            // Four binomial standard errors of a hundred pixels, and 0.05 for the limit that moves with the signals
            // measured.
            Assert.InRange(
                complete,
                least - 0.05 - 4 * Math.Sqrt(least * (1 - least) / 100),
                most + 0.05 + 4 * Math.Sqrt(most * (1 - most) / 100)
            );
            if (bend == 0)
                Assert.Empty(found);
            Assert.Equal(0, found.Count(i => !real.Contains(i)));
        }
    }

    [Fact]
    public void HitsByChargedParticlesMakeNoPixelNonLinear()
    {
        // 2250 s of darks at 0.5 hits per megapixel and second on 0.12 megapixel: some 135 tracks of several pixels.
        CameraDescription camera = PatternNight.Camera(PatternNight.Shots(5, -10)) with
        {
            Width = 400,
            Height = 300,
            CosmicRays = new CosmicRays
            {
                HitsPerMegapixelSecond = 0.5,
                ElectronsPerPixel = 800,
                Length = 4,
            },
        };
        PixelFlags[] flags = Measure(new PatternNight(camera, 71)).Maps.Flags;
        output.WriteLine(
            $"{flags.Count(f => f.HasFlag(PixelFlags.Noisy))} noisy pixels, "
                + $"{flags.Count(f => f.HasFlag(PixelFlags.NonLinear))} called non-linear"
        );
        Assert.InRange(flags.Count(f => f.HasFlag(PixelFlags.Noisy)), 200, 2000);
        // A pixel hit twice, in different sets, may still pass for one: (2000/120000)²/2·120000 = 17 pixels with two
        // hits at most, whose scatter counts in both.
        Assert.InRange(flags.Count(f => f.HasFlag(PixelFlags.NonLinear)), 0, 1);
    }

    /// <summary>Pixels whose signal is rate·t·(1 − bend·t/300), with its own shot noise; 2 ADU per electron.</summary>
    private static void AddBent(PatternNight night, int[] pixels, double rate, double bend)
    {
        var random = new Random(66);
        foreach (
            (SimulatedFrame frame, IFrameSamples samples) in night
                .Night.Frames.Where(f => f.Kind == FrameKind.Dark)
                .Zip(night.Of(FrameKind.Dark))
        )
        foreach (int i in pixels)
            ((MemorySamples)samples).All[i] += (ushort)(
                2
                * MathNet.Numerics.Distributions.Poisson.Sample(
                    random,
                    rate * frame.ExposureSeconds * (1 - bend * frame.ExposureSeconds / 300)
                )
            );
    }

    /// <summary>Share of pixels of which one residual against the straight line exceeds seven of its standard errors
    /// (five frames each of 30, 120 and 300 s): at least that of the residual which
    /// does so most often, at most the sum. A residual scatters by the noise of all three points, its limit is seven
    /// errors of its own.</summary>
    private static (double Least, double Most) Expected(double rate, double bend)
    {
        double[] seconds = [30, 120, 300],
            signals = [.. seconds.Select(t => rate * t * (1 - bend * t / 300))];
        // read noise, rounding to 0.5 e-, the typical pixel's dark signal and its own
        double[] errors = [.. seconds.Zip(signals, (t, s) => Math.Sqrt((4 + 1.0 / 48 + 0.05 * t + s) / 5))];
        double centre = seconds.Average(),
            spread = seconds.Sum(t => (t - centre) * (t - centre));
        double[] chances =
        [
            .. Enumerable
                .Range(0, 3)
                .Select(g =>
                {
                    double[] weights =
                    [
                        .. Enumerable
                            .Range(0, 3)
                            .Select(k =>
                                (k == g ? 1 : 0) - 1.0 / 3 - (seconds[g] - centre) * (seconds[k] - centre) / spread
                            ),
                    ];
                    double residual = weights.Zip(signals, (w, s) => w * s).Sum(),
                        scatter = Math.Sqrt(weights.Zip(errors, (w, e) => w * w * e * e).Sum());
                    double limit = Math.Max(7 * errors[g], 0.05 * (signals.Max() - signals.Min()));
                    return MathNet.Numerics.Distributions.Normal.CDF(0, 1, (Math.Abs(residual) - limit) / scatter);
                }),
        ];
        return (chances.Max(), Math.Min(1, chances.Sum()));
    }

    [Fact]
    public void DarkColdPixelsAgainstTheirRate()
    {
        // At 10 °C the typical pixel has 0.42 e-/px/s; what counts is less than 0.2 of that.
        CameraDescription camera = PatternNight.Camera(PatternNight.Shots(5, 10));
        output.WriteLine(DefectCurve.Heading("rate/typical"));
        foreach (double relative in new[] { 0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.6, 1 })
        {
            var night = new PatternNight(
                camera with
                {
                    ColdPixels = new ColdPixels { Share = 0.01, RelativeRate = relative },
                },
                67
            );
            int[] found = DefectCurve.Of(Cold(night), DefectClass.Cold);
            HashSet<int> real = [.. night.Truth.ColdPixels.Select(p => (p.Y - 1) * 160 + p.X - 1)];
            double complete = DefectCurve.Line(output, relative, real, found);
            // The rate of a pixel at a tenth of the typical is good to 0.008 e-/px/s (4 e-² of noise and 1 to 13 e-² of
            // signal, five frames each of 30, 120 and 300 s), of one at three tenths to
            // 0.012: the limit of 0.084 lies 5 of these above the one and 3.4 below the other. 6 standard errors of the
            // typical pixel are 0.13: less than the 0.33 that are missing.
            if (relative <= 0.1)
                Assert.InRange(complete, 0.98, 1);
            if (relative >= 0.3)
                Assert.InRange(complete, 0, 0.02);
            Assert.Equal(0, found.Count(i => !real.Contains(i)));
        }
        // Without such pixels none is found, uneven as the pixels may be: ln 5 is 8 standard deviations of ln(rate).
        Assert.Empty(
            DefectCurve.Of(
                Cold(new PatternNight(camera with { Width = 400, Height = 300, DarkNonuniformity = 0.2 }, 68)),
                DefectClass.Cold
            )
        );
    }

    [Fact]
    public void WhereNoiseHidesTheTypicalRateNoPixelIsCold()
    {
        // 0.017 e-/px/s at −20 °C are less than 3 standard errors of a pixel's rate (4.5 to 9 e-² in a frame: 0.006):
        // nothing can lie 6 of them below.
        var night = new PatternNight(
            PatternNight.Camera(PatternNight.Shots(5, -20)) with
            {
                ColdPixels = new ColdPixels { Share = 0.01 },
            },
            67
        );
        Assert.Empty(DefectCurve.Of(Cold(night, -20), DefectClass.Cold));
    }

    private static PatternResult Cold(PatternNight night, double celsius = 10) =>
        PatternMeasurement.Measure(night.Input(celsius) with { Thresholds = thresholds }, null)!;
}
