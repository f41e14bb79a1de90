using SensorProfile.Characterisation;
using SensorProfile.Frames;
using SensorProfile.Profiles;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Characterisation;

/// <summary>The flat-field residual, from frames whose change between the halves is known.</summary>
public sealed class FlatsOnFlatsTests(ITestOutputHelper output)
{
    private const int Width = 192,
        Height = 160,
        Cell = 32;
    private const double Gain = 0.5, // e-/ADU
        ReadNoise = 3, // e-
        Half = 12_000; // e-

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.01)] // the lamp leans by so much from the middle to the edge in the later half
    public void ALampThatLeansIsSeenOverAreas(double lean)
    {
        ModeProfile mode = Measure(8, lean, out _);
        Measurement pixels = mode.FlatResidual!,
            areas = mode.FlatResidualOverAreas!;
        double[] ofColumns = [.. Enumerable.Range(0, Width / Cell).Select(c => 100 * lean * Leaning(Cell * (c + 0.5)))];
        // variance over the cells, each column of them as often as there are rows
        double truth = Math.Sqrt(Height / Cell * ofColumns.Sum(v => v * v) / (Width / Cell * (Height / Cell) - 1.0));
        output.WriteLine($"pixels {QuantityText.Of(pixels)}, areas {QuantityText.Of(areas)}, truth {truth:0.####} %");
        Assert.Equal("%", areas.Unit);
        Assert.InRange(areas.Value, truth - 2 * areas.StandardUncertainty, truth + 2 * areas.StandardUncertainty);
        // inside a cell the leaning light differs by lean/6 from edge to edge, 0.05 % as a standard deviation
        double within = 100 * lean * 2 * Cell / Width / Math.Sqrt(12);
        Assert.InRange(
            pixels.Value,
            within - 2.5 * pixels.StandardUncertainty,
            within + 2.5 * pixels.StandardUncertainty
        );
    }

    [Fact]
    public void TwoFlatsOfALevelAreTooFewAndItIsSaid()
    {
        ModeProfile mode = Measure(2, 0, out IReadOnlyList<Finding> findings);
        Assert.NotNull(mode.Gain);
        Assert.Null(mode.FlatResidual);
        Assert.Null(mode.FlatResidualOverAreas);
        Assert.Contains(findings, f => f is { Code: "flat-residual-not-measured", Severity: Severity.Note });
    }

    private static double Leaning(double x) => (x - Width / 2.0) / (Width / 2.0);

    private static ModeProfile Measure(int atHalf, double lean, out IReadOnlyList<Finding> findings)
    {
        var random = new Random(11);
        double[] response = [.. Enumerable.Range(0, Width * Height).Select(_ => 1 + 0.006 * Normal(random))];
        int taken = 0;
        FrameInMemory Take(FrameKind kind, double seconds, double electrons, double leaning)
        {
            var samples = new ushort[Width * Height];
            for (int i = 0; i < samples.Length; i++)
            {
                double light = electrons * response[i] * (1 + leaning * Leaning(i % Width + 0.5)),
                    noise = Math.Sqrt(ReadNoise * ReadNoise + light) * Normal(random);
                samples[i] = (ushort)Math.Clamp(Math.Round(500 + (light + noise) / Gain), 0, 65535);
            }
            string name = $"{kind} {++taken:000}";
            return new FrameInMemory(
                new Frame
                {
                    Name = name,
                    Path = name,
                    Kind = kind,
                    ExposureSeconds = seconds,
                    TemperatureCelsius = -10,
                    Width = Width,
                    Height = Height,
                    StartUtc = new DateTimeOffset(2031, 10, 14, 20, 0, 0, TimeSpan.Zero).AddMinutes(taken),
                },
                samples
            );
        }
        List<FrameInMemory> frames = [];
        for (int i = 0; i < 8; i++)
            frames.Add(Take(FrameKind.Bias, 0, 0, 0));
        for (int level = 1; level <= 6; level++)
        for (int i = 0; i < (level == 4 ? atHalf : 2); i++)
            frames.Add(Take(FrameKind.Flat, level, Half / 4 * level, level == 4 && i >= atHalf / 2 ? lean : 0));
        CameraProfile profile = Characteriser.Run(frames, new CharacterisationOptions()).Profile;
        findings = profile.Findings;
        return Assert.Single(profile.Modes);
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
