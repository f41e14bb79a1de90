using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Sensors;

/// <summary>
/// The hot pixels of an individual sensor at its age: those hot from the start and those added since, less those
/// healed.
/// </summary>
/// <remarks>
/// Every pixel's fate is drawn in a fixed order from its own stream, so that the sensor of year 2 keeps the hot pixels
/// of year 1.
/// </remarks>
internal static class HotPixelPopulation
{
    /// <summary>All hot pixels at <see cref="CameraDescription.AgeYears"/>, ordered by position.</summary>
    /// <param name="camera">The camera at its age.</param>
    /// <param name="clusters">Positions of the groups of hot pixels.</param>
    /// <param name="serial">The individual sensor.</param>
    public static HotPixel[] Draw(CameraDescription camera, IReadOnlyList<int[]> clusters, ulong serial)
    {
        List<HotPixel> all =
        [
            .. BornHot(camera, serial),
            .. TurnedHot(camera, serial),
            .. Patch(camera, serial),
            .. Clusters(camera, clusters, serial),
            .. PhysicalDefects.Hot(camera, serial),
        ];
        return [.. all.OrderBy(p => p.Index).ThenBy(p => p.BornYears)];
    }

    private static List<HotPixel> BornHot(CameraDescription camera, ulong serial)
    {
        var random = RandomStream.For(serial, Purpose.HotPixels);
        var found = new List<HotPixel>();
        foreach (
            int index in RandomPixels.Choose(
                camera.HotPixels.Share,
                camera.Width * camera.Height,
                serial,
                Purpose.HotPixels
            )
        )
        {
            Add(found, Draw(camera, ref random, index, 0), LifeYears(camera, ref random), camera.AgeYears);
        }
        return found;
    }

    /// <summary>New hot pixels are a Poisson process in time, uniform over the sensor.</summary>
    private static List<HotPixel> TurnedHot(CameraDescription camera, ulong serial)
    {
        var found = new List<HotPixel>();
        int pixels = camera.Width * camera.Height;
        double birthsPerYear = camera.Ageing.NewHotShare * pixels;
        if (birthsPerYear <= 0)
        {
            return found;
        }
        var random = RandomStream.For(serial, Purpose.NewHotPixels);
        for (
            double born = random.NextExponential() / birthsPerYear;
            born <= camera.AgeYears;
            born += random.NextExponential() / birthsPerYear
        )
        {
            HotPixel pixel = Draw(camera, ref random, random.NextIndex(pixels), born);
            Add(found, pixel, LifeYears(camera, ref random), camera.AgeYears);
        }
        return found;
    }

    /// <summary>
    /// The patch reaches a pixel when its radius does; a share of the pixels reached turns hot and stays hot.
    /// </summary>
    private static List<HotPixel> Patch(CameraDescription camera, ulong serial)
    {
        var found = new List<HotPixel>();
        if (camera.Ageing.Patch is not { RadiusPerYear: > 0 } patch)
        {
            return found;
        }
        double radius = patch.RadiusPerYear * camera.AgeYears;
        int firstRow = (int)Math.Clamp(Math.Floor(patch.Y - 1 - radius), 0, camera.Height);
        int endRow = (int)Math.Clamp(Math.Ceiling(patch.Y + radius), 0, camera.Height);
        for (int row = firstRow; row < endRow; row++)
        {
            var random = RandomStream.For(serial, Purpose.Patch, row);
            for (int column = 0; column < camera.Width; column++)
            {
                bool turns = random.NextUniform() < patch.Density;
                double rate = patch.Rate * random.NextExponential();
                double activation = Activation(camera.HotPixels, ref random);
                double distance = Math.Sqrt(Math.Pow(column + 1 - patch.X, 2) + Math.Pow(row + 1 - patch.Y, 2));
                if (turns && distance <= radius)
                {
                    found.Add(
                        new HotPixel(row * camera.Width + column, rate, activation, distance / patch.RadiusPerYear)
                    );
                }
            }
        }
        return found;
    }

    private static List<HotPixel> Clusters(CameraDescription camera, IReadOnlyList<int[]> clusters, ulong serial)
    {
        var random = RandomStream.For(serial, Purpose.HotClusters, 1); // separate from the stream of their positions
        var found = new List<HotPixel>();
        foreach (int index in clusters.SelectMany(c => c))
        {
            found.Add(new HotPixel(index, camera.HotClusters.Rate, Activation(camera.HotPixels, ref random), 0));
        }
        return found;
    }

    private static void Add(List<HotPixel> found, HotPixel pixel, double life, double age)
    {
        if (pixel.BornYears + life > age)
        {
            found.Add(pixel);
        }
    }

    private static HotPixel Draw(CameraDescription camera, ref RandomStream random, int index, double born)
    {
        HotPixelDistribution distribution = camera.HotPixels.Distribution;
        double rate =
            distribution.Kind == HotPixelTail.LogUniform
                ? distribution.Minimum * Math.Pow(distribution.Maximum / distribution.Minimum, random.NextUniform())
                : Math.Min(distribution.Maximum, distribution.Minimum + distribution.Scale * random.NextExponential());
        return new HotPixel(index, rate, Activation(camera.HotPixels, ref random), born);
    }

    private static double Activation(HotPixels hot, ref RandomStream random) =>
        Math.Clamp(hot.Activation + hot.ActivationSpread * random.NextNormal(), 0.3, 3);

    private static double LifeYears(CameraDescription camera, ref RandomStream random)
    {
        // always drawn, since the order of draws must not depend on the parameters
        double life = random.NextExponential();
        return camera.Ageing.HealedShare > 0
            ? life / -Math.Log(1 - camera.Ageing.HealedShare)
            : double.PositiveInfinity;
    }
}
