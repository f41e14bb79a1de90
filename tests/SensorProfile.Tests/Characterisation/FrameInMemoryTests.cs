using SensorProfile.Characterisation;
using SensorProfile.Frames;
using SensorProfile.Profiles;
using SensorProfile.Tests.HouseRules;

namespace SensorProfile.Tests.Characterisation;

/// <summary>A program that holds its frames in memory gets a profile without a file.</summary>
public sealed class FrameInMemoryTests
{
    private const int Width = 128;
    private const int Height = 96;
    private const double Gain = 0.5; // e-/ADU
    private const double ReadNoise = 3; // e-

    private readonly Random random = new(7);

    [Fact]
    public void TwentyLinesMeasureACamera()
    {
        // the guide's program: from here
        List<FrameInMemory> frames = [];
        void Take(FrameKind kind, double seconds, int count)
        {
            for (int i = 0; i < count; i++)
            {
                string name = $"{kind} {seconds} s, {i}";
                var facts = new Frame
                {
                    Name = name,
                    Path = name,
                    Kind = kind,
                    ExposureSeconds = seconds,
                    TemperatureCelsius = -10,
                    Width = Width,
                    Height = Height,
                };
                ushort[] samples = Expose(kind, seconds); // your camera: row by row
                frames.Add(new FrameInMemory(facts, samples));
            }
        }
        Take(FrameKind.Bias, 0, 8);
        for (int level = 1; level <= 6; level++)
            Take(FrameKind.Flat, level, 2);

        CameraProfile profile = Characteriser.Run(frames, new CharacterisationOptions()).Profile;
        ModeProfile mode = profile.Modes[0];
        // to here

        Assert.Equal(Gain, mode.Gain!.Value, 5 * mode.Gain.StandardUncertainty);
        Assert.Equal(ReadNoise, mode.ReadNoise!.Value, 5 * mode.ReadNoise.StandardUncertainty);
        Assert.Equal(20, profile.Frames.Used);
    }

    [Fact]
    public void TheGuideShowsTheSameProgram()
    {
        string[] here = File.ReadAllLines(
            Path.Combine(SourceTree.Root, "tests/SensorProfile.Tests/Characterisation/FrameInMemoryTests.cs")
        );
        int from = Array.FindIndex(here, l => l.TrimStart() == "// the guide's program: from here"),
            to = Array.FindIndex(here, l => l.TrimStart() == "// to here");
        Assert.Contains(
            string.Join('\n', here[(from + 1)..to].Select(l => l.Length > 8 ? l[8..] : "")),
            File.ReadAllText(Path.Combine(SourceTree.Root, "DEVELOPERS.md")).ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );
    }

    /// <summary>A flat of 3000 e- a second; normal noise stands for Poisson noise, whose skewness is below 0.03 here.</summary>
    private ushort[] Expose(FrameKind kind, double seconds)
    {
        double electrons = kind == FrameKind.Flat ? 3000 * seconds : 0;
        var samples = new ushort[Width * Height];
        for (int i = 0; i < samples.Length; i++)
        {
            double noise = Math.Sqrt(ReadNoise * ReadNoise + electrons) * Normal(random);
            samples[i] = (ushort)Math.Clamp(Math.Round(500 + (electrons + noise) / Gain), 0, 65535);
        }
        return samples;
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
