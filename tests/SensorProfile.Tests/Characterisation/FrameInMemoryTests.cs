using SensorProfile.Characterisation;
using SensorProfile.Frames;
using SensorProfile.Profiles;

namespace SensorProfile.Tests.Characterisation;

/// <summary>A program that holds its frames in memory gets a profile without a file.</summary>
public sealed class FrameInMemoryTests
{
    private const int Width = 128;
    private const int Height = 96;
    private const double Gain = 0.5; // e-/ADU
    private const double ReadNoise = 3; // e-

    [Fact]
    public void TwentyLinesMeasureACamera()
    {
        var random = new Random(7);
        // Normal noise stands for the Poisson noise of 1000 e- and more: its skewness is below 0.03.
        FrameInMemory Take(FrameKind kind, double seconds, double electrons, int number)
        {
            var samples = new ushort[Width * Height];
            for (int i = 0; i < samples.Length; i++)
            {
                double noise = Math.Sqrt(ReadNoise * ReadNoise + electrons) * Normal(random);
                samples[i] = (ushort)Math.Clamp(Math.Round(500 + (electrons + noise) / Gain), 0, 65535);
            }
            string name = $"{kind} {seconds} s, {number}";
            Frame facts = new()
            {
                Name = name,
                Path = name,
                Kind = kind,
                ExposureSeconds = seconds,
                TemperatureCelsius = -10,
                Width = Width,
                Height = Height,
            };
            return new FrameInMemory(facts, samples);
        }

        List<FrameInMemory> frames = [];
        for (int i = 0; i < 8; i++)
            frames.Add(Take(FrameKind.Bias, 0, 0, i));
        for (int level = 1; level <= 6; level++)
        for (int i = 0; i < 2; i++)
            frames.Add(Take(FrameKind.Flat, level, 3000 * level, i));

        CameraProfile profile = Characteriser.Run(frames, new CharacterisationOptions()).Profile;

        ModeProfile mode = Assert.Single(profile.Modes);
        Assert.Equal(Gain, mode.Gain!.Value, 5 * mode.Gain.StandardUncertainty);
        Assert.Equal(ReadNoise, mode.ReadNoise!.Value, 5 * mode.ReadNoise.StandardUncertainty);
        Assert.Equal(20, profile.Frames.Used);
    }

    [Fact]
    public void AFrameWithTooFewSamplesIsNamed()
    {
        Frame facts = new()
        {
            Name = "bias 1",
            Path = "bias 1",
            Width = 4,
            Height = 3,
        };
        ArgumentException refused = Assert.Throws<ArgumentException>(() =>
            Characteriser.Run([new FrameInMemory(facts, new ushort[11])], new CharacterisationOptions())
        );
        Assert.StartsWith(
            "The frame 'bias 1' is 4 × 3 px and has 11 samples; give width × height of them.",
            refused.Message,
            StringComparison.Ordinal
        );
        FrameInMemory twice = new(facts, new ushort[12]);
        Assert.StartsWith(
            "Two frames are named 'bias 1'; give every frame a name of its own.",
            Assert
                .Throws<ArgumentException>(() => Characteriser.Run([twice, twice], new CharacterisationOptions()))
                .Message,
            StringComparison.Ordinal
        );
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
