using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Reporting.Tests.Answers.Nights;

/// <summary>A camera, a sky and nights at random; the same for the same seed.</summary>
internal sealed class RandomCase
{
    private readonly Random random;

    public RandomCase(int seed)
    {
        random = new Random(seed);
        Camera = new Tarn
        {
            Rate = Spread(1e-4, 0.3),
            Doubling = Between(4.5, 9),
            ReadNoise = Spread(0.8, 8),
            Gain = Spread(0.1, 2),
            HotShare = Between(0.001, 0.03),
            Relative = 0.01,
            Distribution = random.Next(5) > 0,
        };
        Camera = Camera with { HotFrom = Camera.Rate * Spread(2, 60), HotDoubling = Camera.Doubling + Between(0, 2) };
        Floor = random.Next(5) == 0 ? Camera.Rate * Spread(0.1, 100) : 0;
        double low = Math.Round(Between(-32, 34), 1);
        Range = [low, Math.Round(low + Between(2, 35), 1)];
        Question = Asked();
    }

    public Tarn Camera { get; }

    /// <summary>Part of the dark current that no cooling takes away, e-/px/s.</summary>
    public double Floor { get; }

    public double[] Range { get; }

    public SetpointQuestion Question { get; }

    public CameraProfile Profile => Camera.Profile() with { Modes = [Mode] };

    public ModeProfile Mode
    {
        get
        {
            ModeProfile mode = Camera.Mode();
            DarkCurrentProfile dark = mode.DarkCurrent! with { MeasuredRange = Range };
            DarkCurrentModel law = dark.Models[0];
            if (Floor > 0)
                dark = dark with
                {
                    Selected = "doubling+floor",
                    Models =
                    [
                        law with
                        {
                            Name = "doubling+floor",
                            Parameters =
                            [
                                .. law.Parameters,
                                new ModelParameter("floor", Floor, 0.01 * Floor, "e-/px/s", 6, "true value"),
                            ],
                            Covariance =
                            [
                                [law.Covariance[0][0], law.Covariance[0][1], 0],
                                [law.Covariance[1][0], law.Covariance[1][1], 0],
                                [0, 0, 1e-4 * Floor * Floor],
                            ],
                        },
                    ],
                };
            return mode with { DarkCurrent = dark };
        }
    }

    /// <summary>Noise that dark current adds to the typical pixel, %, by the formula and the true values.</summary>
    public double TrueExtra(double celsius)
    {
        double t = Question.ExposureSeconds,
            quiet = Question.Sky!.Rate.Value * t + Camera.ReadNoise * Camera.ReadNoise + Camera.Gain * Camera.Gain / 12,
            dark = (Camera.Rate * Math.Pow(2, (celsius - Tarn.Reference) / Camera.Doubling) + Floor) * t;
        return 100 * (Math.Sqrt(1 + dark / quiet) - 1);
    }

    private SetpointQuestion Asked()
    {
        bool cooled = random.Next(4) > 0;
        double air = Between(-25, 35);
        AmbientTemperature[] nights =
        [
            .. Enumerable
                .Range(0, random.Next(4))
                .Select(i => new AmbientTemperature($"night {i}", Math.Round(air - Between(0, 12), 1))),
        ];
        double? reach = cooled && nights.Length > 0 && random.Next(3) > 0 ? Between(8, 45) : null;
        return new SetpointQuestion
        {
            ExposureSeconds = Math.Round(Spread(2, 300), 1),
            Sky = SkyRate.Given(Spread(0.02, 60)),
            Loss = Spread(0.01, 0.2),
            Ambient = nights,
            MaximumDifference = reach,
            Margin = Between(0, 5),
            Cooled = cooled,
            SelfHeating = cooled || random.Next(2) == 0 ? 0 : Between(1, 8),
        };
    }

    private double Between(double low, double high) => low + (high - low) * random.NextDouble();

    private double Spread(double low, double high) => low * Math.Pow(high / low, random.NextDouble());
}
