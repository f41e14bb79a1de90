using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Thermometer;
using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using Xunit.Abstractions;
using static System.FormattableString;

namespace SensorProfile.Tests.FixedPattern.Thermometer;

/// <summary>
/// The hot pixels' temperatures lie about the truth as their uncertainty says, over many small sensors; and how that
/// goes down with the number of hot pixels.
/// </summary>
public sealed class HotPixelThermometerCoverageTests(ITestOutputHelper output)
{
    /// <summary>What one night gave: errors and uncertainties, °C.</summary>
    private sealed record Night(
        int HotPixels,
        IReadOnlyList<(double Error, double Doubt)> Frames,
        IReadOnlyList<(double Error, double Doubt)> Sets
    );

    private static Night Measure(ulong seed, int width, int height, double share, double brightest, bool bias = true)
    {
        const int Frames = 6;
        var night = new PatternNight(
            PatternNight.Camera([
                .. bias
                    ? new[]
                    {
                        new Shot { Kind = FrameKind.Bias, Count = 10 },
                    }
                    : [],
                .. new[] { -15.0, -10, -5 }.SelectMany(t =>
                    new[] { 60.0, 120, 300 }.Select(e => new Shot
                    {
                        Kind = FrameKind.Dark,
                        Exposure = e,
                        Temperature = t,
                        Count = Frames,
                    })
                ),
            ]) with
            {
                Width = width,
                Height = height,
                Serial = seed,
                Thermometer = new Simulation.Parameters.Sensor.Thermometer { Wobble = 0.2, ReportsTarget = true },
                BiasPattern = new BiasPattern { Pixel = 4 },
                HotPixels = new HotPixels
                {
                    Share = share,
                    Activation = 0.9,
                    ActivationSpread = 0.05,
                    Distribution = new() { Minimum = 0.3, Maximum = brightest },
                },
            },
            seed
        );
        PatternInput input = night.Input() with { TestLevels = false };
        PatternResult result = PatternMeasurement.Measure(input, null)!;
        var thermometer = HotPixelThermometer.Calibrate(input, result.Maps, result.Defects)!;
        List<(double, double)> frames = [],
            sets = [];
        int count = 0;
        foreach (DarkSeries series in input.Series)
        {
            double[] True(double seconds) =>
                [
                    .. night
                        .Night.Frames.Where(f =>
                            f.Kind == FrameKind.Dark
                            && f.TargetCelsius == series.TemperatureCelsius
                            && f.ExposureSeconds == seconds
                        )
                        .Select(f => f.DieCelsius),
                ];
            // The zero is the temperature at which the pixels had their mean brightness.
            double zero = 6.5 / 0.9 * Math.Log2(True(300).Average(t => Math.Pow(2, t * 0.9 / 6.5)));
            IReadOnlyList<ThermometerSet> found = thermometer.Temperatures(series)!;
            for (int g = 0; g < found.Count; g++)
            {
                double[] truth = True(series.Exposures[g].Seconds);
                frames.AddRange(found[g].Frames.Select((m, k) => (m.Value - (truth[k] - zero), m.StandardUncertainty)));
                if (series.Exposures[g].Seconds < 300)
                    sets.Add((found[g].Mean.Value - (truth.Average() - zero), found[g].Mean.StandardUncertainty));
                count = (int)found[g].Frames[0].Samples;
            }
        }
        return new(count, frames, sets);
    }

    [Theory, InlineData(30.0, true), InlineData(3.0, true), InlineData(30.0, false)]
    public void IntervalsHoldTheTruthAsOftenAsTheySay(double brightest, bool bias)
    {
        int count = LongRuns.Of(40, 120);
        Night[] nights =
        [
            .. Enumerable
                .Range(0, count)
                .AsParallel()
                .AsOrdered()
                .Select(k => Measure(1000 + (ulong)k, 64, 48, 0.03, brightest, bias)),
        ];
        double[] Z(Func<Night, IEnumerable<(double Error, double Doubt)>> of) =>
            [.. nights.SelectMany(of).Select(e => e.Error / e.Doubt)];
        double[] frames = Z(n => n.Frames),
            sets = Z(n => n.Sets);
        double inFrames = frames.Count(z => Math.Abs(z) < 1.96) / (double)frames.Length,
            inSets = sets.Count(z => Math.Abs(z) < 1.96) / (double)sets.Length;
        output.WriteLine(
            Invariant($"{nights.Average(n => n.HotPixels):0} hot pixels of up to {brightest} e-/px/s, ")
                + Invariant($"{(bias ? "with" : "without")} bias frames; {frames.Length} frames: mean z ")
                + Invariant($"{frames.Average():0.00}, rms {Rms(frames):0.00}, {inFrames:P1} inside 95 %; ")
                + Invariant($"{sets.Length} means of six: mean z {sets.Average():0.00}, rms {Rms(sets):0.00}, ")
                + Invariant($"{inSets:P1} inside")
        );
        // 720 means of 120 nights share the doubling temperature of their night and, in pairs, their reference: as good
        // as 300 independent ones, ± 1.3 %. Frames: as good as those.
        double fewer = Math.Sqrt(120.0 / count);
        Assert.InRange(inFrames, 0.95 - 0.04 * fewer, 0.95 + 0.03 * fewer);
        Assert.InRange(inSets, 0.95 - 0.04 * fewer, 0.95 + 0.03 * fewer);
        Assert.InRange(sets.Average(), -0.35 * fewer, 0.35 * fewer);
    }

    [Fact]
    public void TheUncertaintyFallsAsTheRootOfTheNumberOfHotPixels()
    {
        output.WriteLine("hot pixels   nights   u of a frame of 60 s   rms error   u·√number");
        var scaled = new List<double>();
        foreach ((int width, int height, int nights) in new[] { (64, 48, 40), (128, 96, 20), (256, 192, 10) })
        {
            Night[] all =
            [
                .. Enumerable.Range(0, nights).Select(k => Measure(2000 + (ulong)k, width, height, 0.015, 30)),
            ];
            double number = all.Average(n => n.HotPixels);
            (double Error, double Doubt)[] frames =
            [
                .. all.SelectMany(n => Enumerable.Range(0, 3).SelectMany(t => n.Frames.Skip(18 * t).Take(6))),
            ];
            double doubt = Math.Sqrt(frames.Average(f => f.Doubt * f.Doubt)),
                error = Math.Sqrt(frames.Average(f => f.Error * f.Error));
            scaled.Add(doubt * Math.Sqrt(number));
            output.WriteLine(
                FormattableString.Invariant(
                    $"{number, 10:0} {nights, 8} {doubt, 22:0.0000} {error, 11:0.0000} {scaled[^1], 11:0.000}"
                )
            );
            // 180 frames and more; those of a set share the noise of its reference, a third of the whole: ± 10 %.
            Assert.InRange(error / doubt, 0.7, 1.3);
        }
        output.WriteLine(
            FormattableString.Invariant(
                $"9 Mpixel with one hot pixel in 12 000: {scaled[^1] / Math.Sqrt(9e6 / 12000):0.000} °C for a frame of 60 s"
            )
        );
        // The same kinds of pixels: the product stays, but for the draw of their brightness, of which the brightest few
        // rule (the smallest sensors have 46 ± 7).
        Assert.All(scaled, s => Assert.InRange(s / scaled[^1], 0.8, 1.25));
    }

    private static double Rms(double[] values) => Math.Sqrt(values.Average(v => v * v));
}
