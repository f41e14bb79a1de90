using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Physics;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Tests.Characterisation;

namespace SensorProfile.Tests.Physics;

/// <summary>Small cameras with physical parameters drawn over what amateur sensors show.</summary>
internal static class RandomCameras
{
    /// <summary>The camera of a number: the same every time.</summary>
    internal static CameraDescription Of(int number)
    {
        var random = new Random(7000 + number);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        double Factor(double low, double high) => low * Math.Pow(high / low, random.NextDouble());
        double gain = Factor(0.3, 1.5),
            well = Math.Min(50000, 60000 * gain);
        DarkCurrentParameters dark = new() { RateAtReference = Factor(0.01, 0.1), ReferenceTemperature = -10 };
        dark =
            random.Next(2) == 0
                ? dark with
                {
                    ActivationEnergy = Between(0.55, 0.7),
                    TemperatureExponent = 1.5,
                }
                : dark with
                {
                    DiffusionShare = Between(0, 0.3),
                };
        return new()
        {
            Name = "Tarn-9M",
            Width = 240,
            Height = 160,
            Gain = gain,
            ReadNoise = Between(1.2, 3.5),
            FullWell = well,
            BiasLevel = 600,
            Serial = (ulong)(100 + number),
            BiasPattern = new BiasPattern { Pixel = 0.8 },
            Pedestal = new Pedestal { Jitter = 0.05 },
            DarkCurrent = dark,
            DarkNonuniformity = Between(0.1, 0.25),
            Physics = new SensorPhysics
            {
                Defects =
                [
                    new DefectPopulation
                    {
                        Share = Between(0.015, 0.05),
                        Rate = dark.RateAtReference * Between(3, 8),
                        Slope = Between(0.8, 1.5),
                        Maximum = 40,
                        Energy = Between(0.54, 0.64),
                        EnergySpread = Between(0.01, 0.05),
                        DiffusionShare = Between(0, 0.1),
                    },
                ],
            },
            Glow =
                random.Next(3) == 0
                    ? []
                    :
                    [
                        new Glow
                        {
                            Shape = GlowShape.RightEdge,
                            Rate = dark.RateAtReference * Factor(1, 10),
                            Width = Between(15, 40),
                            Y = 80,
                            Length = 80,
                            ActivationEnergy = Between(0, 0.3),
                        },
                    ],
            Shots = Nights.Full(well, [-20, -15, -10, -5, 0], [30, 120, 300], darks: 4, bias: 16),
        };
    }
}
