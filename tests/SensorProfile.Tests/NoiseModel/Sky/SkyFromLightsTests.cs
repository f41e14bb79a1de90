using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Session;
using SensorProfile.Tests.Decisions;
using SensorProfile.Tests.Frames;

namespace SensorProfile.Tests.NoiseModel.Sky;

public class SkyFromLightsTests
{
    private const int Side = 300;
    private const double Pedestal = 400; // ADU
    private static readonly Tarn camera = new(); // 0.8 e-/ADU, 0.006 e-/px/s at −10 °C

    [Theory] // 0.5 e-/px/s of sky for 300 s are 187.5 ADU; 3 % of the pixels hold stars
    [InlineData(true)]
    [InlineData(false)]
    public void FindsTheSkyBehindTheStars(bool withDarks)
    {
        using var folder = new FrameFolder();
        FrameSet lights = Written(folder, FrameKind.Light, 4, 0.5, stars: 0.03);
        FrameSet? darks = withDarks ? Written(folder, FrameKind.Dark, 3, 0, stars: 0.001) : null;
        ModeProfile mode = camera.Mode() with { BiasLevel = new Measurement(Pedestal, 0.1, "ADU", 10, "true value") };
        SkyRate sky = SkyFromLights.Measure(camera.Profile() with { Modes = [mode] }, mode, lights, darks);
        // the wings of the stars that stay within 3 σ move the mean by about 1 %
        Assert.InRange(sky.Rate.Value, 0.495, 0.515);
        Assert.True(Math.Abs(sky.Rate.Value - 0.5) < 2 * sky.Rate.StandardUncertainty);
    }

    // At 20 °C the profile has 0.19 e-/px/s; these lights hold 0.006. The dark current was subtracted twice: by the camera and
    // by us.
    [Theory]
    [InlineData(DarkForm.Variance, 0.506)]
    [InlineData(DarkForm.Level, 0.316)]
    public void APinnedBlackLevelHasTheDarkSignalTakenOff(DarkForm form, double expected)
    {
        using var folder = new FrameFolder();
        FrameSet lights = Written(folder, FrameKind.Light, 4, 0.5, stars: 0) with { TemperatureCelsius = 20 };
        ModeProfile mode = camera.Mode() with { BiasLevel = new Measurement(Pedestal, 0.1, "ADU", 10, "true value") };
        mode = mode with { DarkCurrent = mode.DarkCurrent! with { Form = form } };
        SkyRate sky = SkyFromLights.Measure(camera.Profile() with { Modes = [mode] }, mode, lights);
        Assert.Equal(expected, sky.Rate.Value, 0.01);
    }

    [Fact]
    public void LightsWithoutSkyAreRefused()
    {
        using var folder = new FrameFolder();
        FrameSet lights = Written(folder, FrameKind.Light, 3, 0, stars: 0),
            darks = Written(folder, FrameKind.Dark, 3, 0, stars: 0);
        var refused = Assert.Throws<DecisionRefusedException>(() =>
            SkyFromLights.Measure(camera.Profile(), camera.Mode(), lights, darks)
        );
        Assert.Equal((RefusalKind.CannotTell, "sky-not-seen"), (refused.Kind, refused.Code));
    }

    [Fact]
    public void AProfileWithoutGainIsRefused()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() =>
            SkyFromLights.Measure(
                camera.Profile(),
                camera.Mode() with
                {
                    Gain = null,
                },
                Sets.Of(FrameKind.Light, 3, 300, -10)
            )
        );
        Assert.Equal(
            "The profile has no gain, so the background of the lights cannot be turned into electrons: add flat "
                + "pairs and characterise again, or give the sky as a number.",
            refused.Message
        );
    }

    private static FrameSet Written(FrameFolder folder, FrameKind kind, int frames, double sky, double stars)
    {
        var random = new Random(17 + (int)kind);
        var written = new List<Frame>();
        for (int i = 0; i < frames; i++)
        {
            ushort[] pixels = new ushort[Side * Side];
            for (int p = 0; p < pixels.Length; p++)
            {
                double electrons = (sky + 0.006) * 300;
                // many faint, few bright
                if (random.NextDouble() < stars)
                    electrons += 50 / Math.Max(random.NextDouble(), 1e-3);
                electrons += Math.Sqrt(electrons + 2.25) * SensorReader.Deviate(random);
                pixels[p] = (ushort)Math.Clamp(Math.Round(Pedestal + electrons / camera.Gain), 0, 65535);
            }
            string name = $"{kind}-{i}.fits",
                path = folder.Full(name);
            FitsWriter.Write(path, new FitsImage<ushort>(Side, Side, pixels));
            written.Add(
                new Frame
                {
                    Path = path,
                    Name = name,
                    Kind = kind,
                    ExposureSeconds = 300,
                    TemperatureCelsius = -10,
                    Width = Side,
                    Height = Side,
                }
            );
        }
        return new FrameSet
        {
            Kind = kind,
            Settings = new ModeSettings(),
            Width = Side,
            Height = Side,
            ExposureSeconds = 300,
            TemperatureCelsius = -10,
            Frames = written,
        };
    }
}
