using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Reporting.Tests.Answers.Darks;

/// <summary>A camera, lights and a stack of them at random; the same for the same seed.</summary>
internal sealed class RandomStack
{
    private readonly Random random;

    public RandomStack(int seed)
    {
        random = new Random(seed);
        double rate = Spread(3e-4, 0.1);
        Camera = new Tarn
        {
            Rate = rate,
            Doubling = Between(5, 8),
            LogSpread = Between(0.05, 0.4),
            ReadNoise = Spread(0.8, 6),
            Gain = Spread(0.1, 2),
            HotShare = Between(0.0005, 0.02),
            HotFrom = rate * Spread(5, 40),
            HotDoubling = Between(6, 9),
            HotTo = rate * 3000,
            Relative = Spread(0.002, 0.05),
            Distribution = random.Next(8) > 0,
        };
        if (random.Next(3) == 0)
            Camera = Camera with { Glow = [Glowing(rate)] };
        Celsius = Math.Round(Between(-22, 8), 1);
        Stack = Described();
    }

    public Tarn Camera { get; }

    public CameraProfile Profile => Camera.Profile() with { Modes = [Mode] };

    public ModeProfile Mode => mode ??= Camera.Mode();

    private ModeProfile? mode;

    /// <summary>Temperature of the lights, °C; the darks of the profile cover −20 to 5 °C.</summary>
    public double Celsius { get; }

    public StackDescription Stack { get; }

    public double Between(double low, double high) => low + (high - low) * random.NextDouble();

    public double Spread(double low, double high) => low * Math.Pow(high / low, random.NextDouble());

    public int Whole(int low, int high) => random.Next(low, high + 1);

    private GlowRegion Glowing(double rate)
    {
        double peak = rate * Spread(0.3, 30);
        return new GlowRegion
        {
            Where = "right edge",
            Peak = Camera.Of(peak, "e-/px/s"),
            DoublingTemperature = Camera.Of(Between(8, 15), "°C"),
        };
    }

    private StackDescription Described()
    {
        int lights = (int)Math.Round(Spread(1, 400));
        int positions = random.Next(3) == 0 ? 1 : Whole(1, lights);
        Rejection rejection = (Rejection)random.Next(4);
        if (rejection is Rejection.Median or Rejection.Winsorised && positions < StackConditions.MinPositions)
            (positions, rejection) = (1, Rejection.None);
        return new StackDescription
        {
            ExposureSeconds = Math.Round(Spread(1, 900), 1),
            Lights = lights,
            DitherPositions = positions,
            Rejection = rejection,
            Sky = SkyRate.Given(Spread(0.02, 60)),
            Limits = new LossLimits { NoiseLoss = Spread(0.01, 0.2) },
        };
    }
}
