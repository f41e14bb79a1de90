using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Truth;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.Telegraph;

/// <summary>Random telegraph pixels of simulated nights: found, measured, not invented.</summary>
public sealed class FlickeringPixelTests(ITestOutputHelper output)
{
    private const double Noise = 2; // e-, the read noise of the simulated camera

    private static CameraDescription Camera(int frames, double[] temperatures) =>
        PatternNight.Camera(PatternNight.Shots(frames, temperatures)) with
        {
            Width = 200,
            Height = 200,
        };

    [Fact]
    public void CompletenessAndPurityAgainstTheStep()
    {
        output.WriteLine("step/noise   true   found   complete   false");
        foreach (double sigmas in new[] { 2.0, 3, 4, 5, 6, 8, 12, 20 })
        {
            var night = new PatternNight(
                Camera(8, [-10]) with
                {
                    TelegraphPixels = new TelegraphPixels
                    {
                        Share = 0.01,
                        Amplitude = sigmas * Noise,
                        DwellHigh = 6,
                        DwellLow = 9,
                    },
                },
                31
            );
            PatternResult result = night.Measure();
            HashSet<int> real = [.. night.Truth.TelegraphPixels.Select(p => (p.Y - 1) * 200 + p.X - 1)];
            int[] found = [.. result.Maps.Levelled.Fits.Keys];
            double complete = (double)found.Count(real.Contains) / real.Count;
            int wrong = found.Count(i => !real.Contains(i));
            output.WriteLine($"{sigmas, 10} {real.Count, 6} {found.Length, 7} {complete, 10:0.000} {wrong, 7}");
            // 34 frames in 4 sets, ν = 30. Parted levels with shares 0.4 and 0.6 leave r = 1/(1 + 0.24·(step/σ)²), σ² =
            // 4 e-² and 1.5, 6 and 15 e-² of dark signal in the darks. The form alone
            // must reach 1 %, ln r < −(4.6 + 24 + 0.7)/14.5: a step of 5.2 mean σ, 7 times the read noise; 12 leave
            // room for sets in which the levels are unevenly seen. What the best
            // possible test would find: TelegraphTestPowerTests.
            if (sigmas >= 12)
                Assert.InRange(complete, 0.95, 1);
            Assert.InRange(wrong, 0, 1); // 1 per million stated, 0.04 expected
            Assert.Equal(found.Length, result.Defects.Counts.Telegraph);
        }
    }

    [Fact]
    public void StepsShareAndDwellComeOutRight()
    {
        var night = new PatternNight(
            Camera(14, [-10]) with
            {
                TelegraphPixels = new TelegraphPixels
                {
                    Share = 0.01,
                    Amplitude = 40,
                    AmplitudeSpread = 0.3,
                    DwellHigh = 600,
                    DwellLow = 900,
                },
            },
            32
        );
        PatternResult result = night.Measure();
        var truth = night.Truth.TelegraphPixels.ToDictionary(p => (p.Y - 1) * 200 + p.X - 1);
        TelegraphFit[] fits = [.. result.Maps.Levelled.Fits.Where(f => truth.ContainsKey(f.Key)).Select(f => f.Value)];
        double[] z =
        [
            .. result
                .Maps.Levelled.Fits.Where(f => truth.ContainsKey(f.Key) && !f.Value.Thermal && f.Value.Levels == 2)
                .Select(f => (f.Value.Step - truth[f.Key].Amplitude) / f.Value.StepUncertainty),
        ];
        output.WriteLine(
            $"{truth.Count} true, {fits.Length} found, {z.Length} as read-out steps of two levels; z mean "
                + $"{z.Average():0.00}, inside 1.96: {z.Count(v => Math.Abs(v) < 1.96) / (double)z.Length:0.000}"
        );
        Assert.InRange(z.Length, 0.7 * truth.Count, truth.Count);
        Assert.InRange(z.Average(), -0.3, 0.3);
        Assert.InRange(z.Count(v => Math.Abs(v) < 1.96) / (double)z.Length, 0.9, 1);
        DwellTimes[] dwell = [.. fits.Select(f => f.Dwell).OfType<DwellTimes>()];
        double[] upper = [.. dwell.Select(d => d.UpperSeconds).Order()];
        output.WriteLine(
            $"dwell known for {dwell.Length}; upper median {upper[upper.Length / 2]:0} s, truth 600; factor "
                + $"{dwell.Average(d => d.Factor):0.00}"
        );
        Assert.InRange(upper[upper.Length / 2], 600 / 1.5, 600 * 1.5);
    }

    [Fact]
    public void ADarkRateThatFlickersIsToldApart()
    {
        var night = new PatternNight(
            Camera(8, [-15, -10, -5]) with
            {
                TelegraphPixels = new TelegraphPixels
                {
                    Share = 0.005,
                    Rate = 1,
                    DwellHigh = 6000,
                    DwellLow = 6000,
                },
            },
            33
        );
        PatternResult result = night.Measure();
        var truth = night.Truth.TelegraphPixels.ToDictionary(p => (p.Y - 1) * 200 + p.X - 1);
        TelegraphFit[] fits = [.. result.Maps.Levelled.Fits.Where(f => truth.ContainsKey(f.Key)).Select(f => f.Value)];
        output.WriteLine(
            $"{truth.Count} true, {result.Maps.Levelled.Fits.Count} found, {fits.Count(f => f.Thermal)} thermal; "
                + "median rate "
                + $"{fits.Where(f => f.Thermal).Select(f => f.Step).Order().ElementAt(fits.Count(f => f.Thermal) / 2):0.000}"
        );
        Assert.InRange(fits.Count(f => f.Thermal), 0.6 * fits.Length, fits.Length);
        Assert.Equal(fits.Length, result.Maps.Levelled.Fits.Count);
    }

    [Fact]
    public void NoisyPixelsAreNotCalledFlickering()
    {
        // Read noise spread over the pixels by a factor 1.65 (one sigma) and hits by charged particles, but no pixel of
        // two levels.
        var night = new PatternNight(
            Camera(8, [-10]) with
            {
                Width = 400,
                Height = 300,
                ReadNoiseSpread = 0.5,
                CosmicRays = new CosmicRays { HitsPerMegapixelSecond = 0.5 },
                HotPixels = new HotPixels
                {
                    Share = 0.01,
                    Distribution = new() { Minimum = 0.1, Maximum = 50 },
                },
            },
            34
        );
        PatternResult result = night.Measure();
        float[] noise = TrueMaps.ReadNoise(night.Night.Sensor);
        int ordinary = result.Maps.Levelled.Fits.Keys.Count(i => noise[i] <= 3 * Noise),
            noisier = noise.Count(n => n > 3 * Noise);
        output.WriteLine(
            $"{result.Maps.Levelled.Tested} tested of 120000; {ordinary} found among pixels of up to 3 times the "
                + $"camera's noise, {result.Maps.Levelled.Fits.Count - ordinary} among the {noisier} noisier ones"
        );
        foreach ((int i, TelegraphFit fit) in result.Maps.Levelled.Fits)
            output.WriteLine($"noise {noise[i]:0.0} e-, rate {result.Maps.Rate[i]:0.00} e-/px/s: {fit}");
        Assert.InRange(result.Maps.Levelled.Tested, 5000, 60000);
        // 0.12 expected at most; 2 or more by chance 0.7 %
        Assert.InRange(ordinary, 0, 1);
        // 1 % at most by the form alone
        Assert.InRange(
            result.Maps.Levelled.Fits.Count - ordinary,
            0,
            (0.01 * noisier) + (4 * Math.Sqrt(0.01 * noisier))
        );
    }

    [Fact]
    public void SoundPixelsAreHardlyEverTested()
    {
        PatternResult result = new PatternNight(Camera(8, [-10]), 35).Measure();
        // 1e-4 pooled and 1e-4 in single sets of 40000: 8 expected, √8 = 2.8
        Assert.InRange(result.Maps.Levelled.Tested, 0, 40);
        Assert.Empty(result.Maps.Levelled.Fits);
    }
}
