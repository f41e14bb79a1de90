using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Physics;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Tests.Characterisation;

namespace SensorProfile.Tests.Physics;

/// <summary>How strongly a physical camera glows.</summary>
public enum GlowStrength
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>At its peak like the ordinary pixel.</summary>
    Weak,

    /// <summary>At its peak twenty times the ordinary pixel; it hardly cools.</summary>
    Strong,
}

/// <summary>Cameras in physical parameters: no law of theirs is one that the library fits to a pixel.</summary>
internal static class PhysicalCameras
{
    internal const double Reference = -10;
    internal const double ReadNoise = 1.6;
    internal const double Gain = 0.8;

    /// <summary>
    /// Ordinary pixels by depletion with 15 % of diffusion, 3 % of hot ones by a power law with energies of 0.50 to 0.70
    /// eV, 1 % of warm ones log-normal, glow of 0.12 eV.
    /// </summary>
    internal static CameraDescription Of(GlowStrength glow, double energySpread = 0.04) =>
        new()
        {
            Name = "Tarn-9M",
            Width = 320,
            Height = 240,
            Gain = Gain,
            ReadNoise = ReadNoise,
            FullWell = 48000,
            BiasLevel = 600,
            Bits = 16,
            Serial = 11,
            BiasPattern = new BiasPattern { Pixel = 0.8 },
            Pedestal = new Pedestal { Jitter = 0.1 },
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = 0.02,
                ReferenceTemperature = Reference,
                DiffusionShare = 0.15,
            },
            DarkNonuniformity = 0.15,
            Physics = new SensorPhysics
            {
                Defects =
                [
                    new DefectPopulation
                    {
                        Share = 0.03,
                        Rate = 0.1,
                        Slope = 1.1,
                        Maximum = 40,
                        Energy = 0.58,
                        EnergySpread = energySpread,
                    },
                    new DefectPopulation
                    {
                        Share = 0.01,
                        Tail = DefectTail.LogNormal,
                        Rate = 0.1,
                        Spread = 0.5,
                        Energy = 0.62,
                        EnergySpread = energySpread,
                        DiffusionShare = 0.1,
                    },
                ],
            },
            Glow =
                glow == GlowStrength.None
                    ? []
                    :
                    [
                        new Glow
                        {
                            Shape = GlowShape.RightEdge,
                            Rate = glow == GlowStrength.Weak ? 0.02 : 0.4,
                            Width = 40,
                            Y = 120,
                            Length = 120,
                            ActivationEnergy = 0.12,
                        },
                    ],
            Shots = Nights.Full(48000, [-25, -20, -15, -10, -5, 0], [30, 120, 300], darks: 4, bias: 16),
        };
}
