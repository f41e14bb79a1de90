using SensorProfile.Simulation.Parameters.Physics;
using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Sensors;

/// <summary>Draws the defects and traps of a sensor's own physics.</summary>
internal static class PhysicalDefects
{
    private const long FirstTraps = 1000; // streams of the traps, separate from those of the defects

    /// <summary>The defects that generate dark current, population by population.</summary>
    public static IEnumerable<HotPixel> Hot(CameraDescription camera, ulong serial)
    {
        IReadOnlyList<DefectPopulation> populations = camera.Physics?.Defects ?? [];
        for (int number = 0; number < populations.Count; number++)
        {
            DefectPopulation law = populations[number];
            foreach (int index in Places(law.Share, camera, serial, 2 * number))
            {
                var random = RandomStream.For(serial, Purpose.PhysicalDefects, 2 * number + 1, index);
                yield return Draw(law, index, ref random);
            }
        }
    }

    /// <summary>The switching traps, population by population.</summary>
    public static IEnumerable<TelegraphPixel> Switching(CameraDescription camera, ulong serial)
    {
        IReadOnlyList<SwitchingTraps> populations = camera.Physics?.SwitchingTraps ?? [];
        for (int number = 0; number < populations.Count; number++)
        {
            SwitchingTraps law = populations[number];
            foreach (int index in Places(law.Share, camera, serial, FirstTraps + 2 * number))
            {
                var random = RandomStream.For(serial, Purpose.PhysicalDefects, FirstTraps + 2 * number + 1, index);
                double strength = random.NextExponential();
                yield return new TelegraphPixel(
                    index,
                    law.Step * strength,
                    law.RateStep * strength,
                    law.DwellHigh * Math.Exp(law.DwellSpread * random.NextNormal()),
                    law.DwellLow * Math.Exp(law.DwellSpread * random.NextNormal())
                )
                {
                    RateEnergy = law.RateEnergy,
                    DwellEnergy = law.DwellEnergy,
                };
            }
        }
    }

    private static List<int> Places(double share, CameraDescription camera, ulong serial, long stream) =>
        RandomPixels.Choose(share, camera.Width * camera.Height, serial, Purpose.PhysicalDefects, stream);

    private static HotPixel Draw(DefectPopulation law, int index, ref RandomStream random)
    {
        double rate;
        do
        {
            rate =
                law.Tail == DefectTail.PowerLaw
                    ? law.Rate * Math.Exp(random.NextExponential() / law.Slope)
                    : law.Rate * Math.Exp(law.Spread * random.NextNormal());
        } while (rate > law.Maximum);
        double energy = law.Energy + law.EnergySpread * random.NextNormal();
        double diffusion = Math.Min(1, 2 * law.DiffusionShare * random.NextUniform());
        return new HotPixel(index, rate, 1, 0)
        {
            Level = new DefectEnergy(Math.Clamp(energy, law.EnergyMinimum, law.EnergyMaximum), diffusion),
        };
    }
}
