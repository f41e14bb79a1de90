using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Sensors;

/// <summary>Draws an individual sensor.</summary>
internal static class SensorFactory
{
    private static readonly DarkCurrentParameters NoDarkCurrent = new() { DoublingTemperature = 6 };

    /// <summary>Draws the sensor of a camera; the same serial number gives the same sensor at every age.</summary>
    /// <param name="camera">A validated description.</param>
    /// <param name="seed">Source of the serial number when the description gives none.</param>
    public static Sensor Build(CameraDescription camera, ulong seed)
    {
        ulong serial = camera.Serial ?? RandomStream.For(seed, Purpose.Serial).Next();
        CameraDescription aged = AgedCamera.Age(camera);
        DarkCurrentParameters dark = aged.DarkCurrent ?? NoDarkCurrent;
        List<int> dead = RandomPixels.Choose(
            aged.DeadPixels.Share,
            aged.Width * aged.Height,
            serial,
            Purpose.DeadPixels
        );
        List<int> cold = RandomPixels.Choose(
            aged.ColdPixels.Share,
            aged.Width * aged.Height,
            serial,
            Purpose.ColdPixels
        );
        IReadOnlyList<int[]> clusters = ClusterPlaces.Draw(aged, serial);
        IReadOnlyList<BadLine> badLines = BadLine.Choose(aged, serial);
        float[] darkRate = DarkRate(aged, dark, cold, badLines, serial);
        float[][] glow = [.. aged.Glow.Select(g => GlowMap.Render(g, aged.Width, aged.Height))];
        return new Sensor
        {
            Camera = aged,
            Serial = serial,
            Dark = dark,
            DarkRate = darkRate,
            DarkRateSum = Sum(darkRate),
            GlowShapes = glow,
            GlowSums = [.. glow.Select(Sum)],
            Response = Response(aged, dead, badLines, serial),
            BiasLevel = BiasLevel(aged, badLines, serial),
            ReadNoise = ReadNoise(aged, serial),
            Hot = new(HotPixelPopulation.Draw(aged, clusters, serial), p => p.Index, aged.Width, aged.Height),
            Telegraph = new(Telegraph(aged, serial), p => p.Index, aged.Width, aged.Height),
            Dead = dead,
            Cold = cold,
            Clusters = clusters,
            BadLines = badLines,
        };
    }

    private static double Sum(float[] values)
    {
        double sum = 0;
        foreach (float value in values)
        {
            sum += value;
        }
        return sum;
    }

    private static float[] DarkRate(
        CameraDescription camera,
        DarkCurrentParameters dark,
        List<int> cold,
        IReadOnlyList<BadLine> badLines,
        ulong serial
    )
    {
        bool badRate = badLines.Any(l => l.Law.Rate > 0);
        if (dark.RateAtReference == 0 && !badRate)
        {
            return [];
        }
        float[] map = new float[camera.Width * camera.Height];
        double spread = camera.DarkNonuniformity;
        Parallel.For(0, camera.Height, row =>
        {
            var random = RandomStream.For(serial, Purpose.DarkPattern, row);
            Span<float> line = map.AsSpan(row * camera.Width, camera.Width);
            for (int x = 0; x < line.Length; x++)
            {
                line[x] = (float)(dark.RateAtReference * (spread > 0 ? Math.Exp(spread * random.NextNormal()) : 1));
            }
        });
        foreach (int index in cold)
        {
            map[index] *= (float)camera.ColdPixels.RelativeRate;
        }
        foreach (BadLine line in badLines)
        {
            foreach (int index in line.Pixels(camera.Width, camera.Height))
            {
                map[index] += (float)line.Law.Rate;
            }
        }
        return map;
    }

    private static float[] Response(
        CameraDescription camera,
        List<int> dead,
        IReadOnlyList<BadLine> badLines,
        ulong serial
    )
    {
        float[] map = new float[camera.Width * camera.Height];
        double centreX = (camera.Width - 1) / 2.0;
        double centreY = (camera.Height - 1) / 2.0;
        double cornerSquare = Math.Max(1, centreX * centreX + centreY * centreY);
        Parallel.For(0, camera.Height, row =>
        {
            var random = RandomStream.For(serial, Purpose.ResponsePattern, row);
            for (int x = 0; x < camera.Width; x++)
            {
                double square = ((x - centreX) * (x - centreX) + (row - centreY) * (row - centreY)) / cornerSquare;
                double response = 1 + camera.ResponseNonuniformity * random.NextNormal();
                map[row * camera.Width + x] = (float)(
                    Math.Max(0, response) * (1 - camera.Vignetting * square) * ColourFilter.Light(camera, x, row)
                );
                foreach (Tap tap in camera.Taps)
                {
                    map[row * camera.Width + x] *= tap.Holds(row, x) ? (float)tap.Response : 1;
                }
            }
        });
        foreach (int index in dead)
        {
            map[index] *= (float)camera.DeadPixels.Response;
        }
        foreach (BadLine line in badLines)
        {
            foreach (int index in line.Pixels(camera.Width, camera.Height))
            {
                map[index] *= (float)line.Law.Response;
            }
        }
        return map;
    }

    private static float[] BiasLevel(CameraDescription camera, IReadOnlyList<BadLine> badLines, ulong serial)
    {
        BiasPattern pattern = camera.BiasPattern;
        if (
            pattern is { Column: 0, Row: 0, Pixel: 0 }
            && badLines.All(l => l.Law.Offset == 0)
            && camera.Taps.All(t => t.Offset == 0)
        )
        {
            return [];
        }
        var lines = RandomStream.For(serial, Purpose.BiasLines);
        double[] columns = [.. Enumerable.Range(0, camera.Width).Select(_ => pattern.Column * lines.NextNormal())];
        double[] rows = [.. Enumerable.Range(0, camera.Height).Select(_ => pattern.Row * lines.NextNormal())];
        float[] map = new float[camera.Width * camera.Height];
        Parallel.For(0, camera.Height, row =>
        {
            var random = RandomStream.For(serial, Purpose.BiasPixels, row);
            for (int x = 0; x < camera.Width; x++)
            {
                map[row * camera.Width + x] = (float)(
                    camera.BiasLevel + columns[x] + rows[row] + pattern.Pixel * random.NextNormal()
                );
                foreach (Tap tap in camera.Taps)
                {
                    map[row * camera.Width + x] += tap.Holds(row, x) ? (float)tap.Offset : 0;
                }
            }
        });
        foreach (BadLine line in badLines)
        {
            foreach (int index in line.Pixels(camera.Width, camera.Height))
            {
                map[index] += (float)line.Law.Offset;
            }
        }
        return map;
    }

    private static float[] ReadNoise(CameraDescription camera, ulong serial)
    {
        if (camera.ReadNoiseSpread == 0 && camera.Taps.All(t => t.Noise == 1))
        {
            return [];
        }
        float[] map = new float[camera.Width * camera.Height];
        Parallel.For(0, camera.Height, row =>
        {
            var random = RandomStream.For(serial, Purpose.ReadNoisePattern, row);
            for (int x = 0; x < camera.Width; x++)
            {
                map[row * camera.Width + x] = (float)(
                    camera.ReadNoise * Math.Exp(camera.ReadNoiseSpread * random.NextNormal())
                );
                foreach (Tap tap in camera.Taps)
                {
                    map[row * camera.Width + x] *= tap.Holds(row, x) ? (float)tap.Noise : 1;
                }
            }
        });
        return map;
    }

    private static TelegraphPixel[] Telegraph(CameraDescription camera, ulong serial)
    {
        TelegraphPixels law = camera.TelegraphPixels;
        var random = RandomStream.For(serial, Purpose.TelegraphPixels);
        var found = new List<TelegraphPixel>();
        foreach (
            int index in RandomPixels.Choose(law.Share, camera.Width * camera.Height, serial, Purpose.TelegraphPixels)
        )
        {
            double strength = Math.Exp(law.AmplitudeSpread * random.NextNormal());
            double high = law.DwellHigh * Math.Exp(law.DwellSpread * random.NextNormal());
            double low = law.DwellLow * Math.Exp(law.DwellSpread * random.NextNormal());
            found.Add(new TelegraphPixel(index, law.Amplitude * strength, law.Rate * strength, high, low));
        }
        found.AddRange(PhysicalDefects.Switching(camera, serial));
        return [.. found.OrderBy(p => p.Index)];
    }
}
