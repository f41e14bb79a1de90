using SensorProfile.DarkCurrent.Levels;
using SensorProfile.Frames;
using SensorProfile.Profiles.Session;
using SensorProfile.Screening;
using SensorProfile.Tests.Pixels;

namespace SensorProfile.Tests.DarkCurrent.Levels;

/// <summary>What the digits of a temperature probe leave open.</summary>
public sealed class ProbeReadingsTests
{
    [Theory] // a value that stands for an interval of width s is uncertain by s/√12 (uniform distribution, GUM 4.3.7)
    [InlineData(-10.0, 0.1)]
    [InlineData(-9.9, 0.1)]
    [InlineData(-9.97, 0.01)]
    [InlineData(-9.967, 0.001)]
    [InlineData(-10.0625, 0.001)]
    public void AProbeThatAlwaysSaysTheSameIsKnownToItsDigits(double reading, double step)
    {
        ScreenedSet[] sets = [Darks(60, reading, reading, reading, reading), Darks(300, reading, reading)];
        Assert.Equal(step / Math.Sqrt(12), Uncertainty(sets), 1e-12);
    }

    [Fact] // with one frame too
    public void ASingleReadingIsKnownToItsDigits() =>
        Assert.Equal(0.1 / Math.Sqrt(12), Uncertainty([Darks(60, -15)]), 1e-12);

    [Fact]
    public void NoReadingAddsNothing() => Assert.Equal(0, Uncertainty([Darks(60, null, null)]));

    /// <summary>
    /// A sensor whose temperature wobbles and drifts about a value anywhere between two codes, read to a tenth of a
    /// degree: the mean reading lies within 1.96 u of the true mean in 95 % of all nights at least.
    /// </summary>
    [Theory]
    [InlineData(4)]
    [InlineData(16)]
    [InlineData(40)]
    public void TheIntervalHoldsTheMeanOfTheTrueTemperatures(int frames)
    {
        const int Nights = 400;
        foreach (double wobble in new[] { 0, 0.01, 0.02, 0.03, 0.05, 0.1, 0.2 })
        foreach (double drift in new[] { 0, 0.05, 0.1, 0.2, 0.5 })
        {
            var random = new Random(frames);
            var noise = new NormalNoise(frames + 1);
            int held = 0;
            for (int night = 0; night < Nights; night++)
            {
                double middle = -10 + random.NextDouble();
                double[] truth =
                [
                    .. Enumerable
                        .Range(0, frames)
                        .Select(i => middle + drift * (i / (frames - 1.0) - 0.5) + noise.Next(wobble)),
                ];
                double?[] readings = [.. truth.Select(t => (double?)Math.Round(t, 1))];
                double u = Uncertainty([Darks(300, readings)]);
                if (Math.Abs(readings.Average()!.Value - truth.Average()) <= 1.96 * u)
                    held++;
            }
            // 95 %, less three standard errors of a share of 400
            Assert.True(held >= 0.917 * Nights, $"wobble {wobble}, drift {drift}: {held} of {Nights}");
        }
    }

    private static double Uncertainty(ScreenedSet[] sets) =>
        ProbeReadings.TemperatureUncertainty(sets, ProbeReadings.Step(sets));

    private static ScreenedSet Darks(double seconds, params double?[] readings)
    {
        Frame[] frames =
        [
            .. readings.Select(
                (t, i) =>
                    new Frame
                    {
                        Path = $"{i}",
                        Name = $"{i}",
                        Kind = FrameKind.Dark,
                        ExposureSeconds = seconds,
                        TemperatureCelsius = t,
                    }
            ),
        ];
        var set = new FrameSet
        {
            Kind = FrameKind.Dark,
            Settings = new ModeSettings(),
            Width = 1,
            Height = 1,
            ExposureSeconds = seconds,
            TemperatureCelsius = readings.Average(),
            Frames = frames,
        };
        return new(set, [.. frames.Select(f => new ScreenedFrame(f, new MemorySamples(f.Name, 1, 1, []), [], [], 0))]);
    }
}
