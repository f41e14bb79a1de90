using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Rendering;
using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Truth;

/// <summary>Per-pixel truth of a sensor, in the size and orientation of a frame.</summary>
internal static class TrueMaps
{
    /// <summary>
    /// Expected dark rate over an exposure, all effects included (telegraph pixels by their duty cycle), e-/px/s.
    /// </summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="dieCelsius">Temperature of the die, °C.</param>
    /// <param name="exposure">Exposure, s; matters only for glow that is not proportional to it.</param>
    public static float[] DarkRate(Sensor sensor, double dieCelsius, double exposure)
    {
        var dark = new DarkSignal(sensor, exposure, dieCelsius);
        return ByRow(sensor, (row, line) =>
        {
            Span<double> means = new double[line.Length];
            dark.SetRow(row, means);
            foreach (TelegraphPixel pixel in sensor.Telegraph.InRow(row))
            {
                means[pixel.Index - row * line.Length] += dark.HighElectrons(pixel) * pixel.Duty;
            }
            for (int x = 0; x < line.Length; x++)
            {
                line[x] = (float)(means[x] / exposure);
            }
        });
    }

    /// <summary>
    /// Doubling temperature of each pixel's whole rate at this temperature, °C; NaN where the rate is 0 or does not
    /// rise with temperature.
    /// </summary>
    /// <remarks>ln 2/(d ln I/dT) by a central difference over ±1 °C, in double precision.</remarks>
    public static float[] Doubling(Sensor sensor, double dieCelsius, double exposure)
    {
        const double step = 1;
        var warm = new DarkSignal(sensor, exposure, dieCelsius + step);
        var cold = new DarkSignal(sensor, exposure, dieCelsius - step);
        return ByRow(sensor, (row, line) =>
        {
            double[] above = new double[line.Length];
            double[] below = new double[line.Length];
            warm.SetRow(row, above);
            cold.SetRow(row, below);
            foreach (TelegraphPixel pixel in sensor.Telegraph.InRow(row))
            {
                above[pixel.Index - row * line.Length] += warm.HighElectrons(pixel) * pixel.Duty;
                below[pixel.Index - row * line.Length] += cold.HighElectrons(pixel) * pixel.Duty;
            }
            for (int x = 0; x < line.Length; x++)
            {
                bool rises = below[x] > 0 && above[x] > below[x];
                line[x] = rises ? (float)(2 * step * Math.Log(2) / Math.Log(above[x] / below[x])) : float.NaN;
            }
        });
    }

    /// <summary>Glow alone over an exposure, e-/px/s.</summary>
    public static float[] Glow(Sensor sensor, double dieCelsius, double exposure)
    {
        IReadOnlyList<Glow> glows = sensor.Camera.Glow;
        double[] peaks =
        [
            .. glows.Select(g =>
                GlowMap.PeakElectrons(g, exposure, dieCelsius, sensor.Dark.ReferenceTemperature) / exposure
            ),
        ];
        return ByRow(sensor, (row, line) =>
        {
            for (int x = 0; x < line.Length; x++)
            {
                double rate = 0;
                for (int i = 0; i < peaks.Length; i++)
                {
                    rate += peaks[i] * sensor.GlowShapes[i][row * line.Length + x];
                }
                line[x] = (float)rate;
            }
        });
    }

    /// <summary>Read noise, e-, without quantisation.</summary>
    public static float[] ReadNoise(Sensor sensor) =>
        sensor.ReadNoise.Length > 0
            ? sensor.ReadNoise
            : ByRow(sensor, (_, line) => line.Fill((float)sensor.Camera.ReadNoise));

    /// <summary>Bias level, ADU.</summary>
    public static float[] BiasLevel(Sensor sensor) =>
        sensor.BiasLevel.Length > 0
            ? sensor.BiasLevel
            : ByRow(sensor, (_, line) => line.Fill((float)sensor.Camera.BiasLevel));

    /// <summary>Defect classes as bits: see <see cref="DefectClasses"/>.</summary>
    public static byte[] Defects(Sensor sensor)
    {
        int width = sensor.Camera.Width;
        byte[] map = new byte[width * sensor.Camera.Height];
        foreach (HotPixel pixel in sensor.Hot.All)
        {
            map[pixel.Index] |= (byte)DefectClasses.Hot;
        }
        foreach (TelegraphPixel pixel in sensor.Telegraph.All)
        {
            map[pixel.Index] |= (byte)DefectClasses.Telegraph;
        }
        foreach (int index in sensor.Dead)
        {
            map[index] |= (byte)DefectClasses.Dead;
        }
        foreach (int index in sensor.Cold)
        {
            map[index] |= (byte)DefectClasses.Cold;
        }
        foreach (int index in sensor.Clusters.SelectMany(c => c))
        {
            map[index] |= (byte)DefectClasses.Cluster;
        }
        foreach (BadLine line in sensor.BadLines)
        {
            foreach (int index in line.Pixels(width, sensor.Camera.Height))
            {
                map[index] |= (byte)(line.IsRow ? DefectClasses.BadRow : DefectClasses.BadColumn);
            }
        }
        return map;
    }

    private delegate void SetLine(int row, Span<float> line);

    private static float[] ByRow(Sensor sensor, SetLine set)
    {
        int width = sensor.Camera.Width;
        float[] map = new float[width * sensor.Camera.Height];
        Parallel.For(0, sensor.Camera.Height, row => set(row, map.AsSpan(row * width, width)));
        return map;
    }
}
