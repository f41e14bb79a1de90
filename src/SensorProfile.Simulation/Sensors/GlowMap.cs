using SensorProfile.Simulation.Parameters.Sensor;

namespace SensorProfile.Simulation.Sensors;

/// <summary>Spatial distribution of a glow: 1 at its peak.</summary>
internal static class GlowMap
{
    private const double UsualWarmUpSeconds = 100;

    /// <summary>Shape of one glow over the frame.</summary>
    public static float[] Render(Glow glow, int width, int height)
    {
        float[] map = new float[width * height];
        for (int row = 0; row < height; row++)
        {
            for (int column = 0; column < width; column++)
            {
                map[row * width + column] = (float)At(glow, column, row, width, height);
            }
        }
        return map;
    }

    /// <summary>Glow signal of an exposure at its peak, e-.</summary>
    /// <param name="glow">The glow.</param>
    /// <param name="exposure">Exposure, s.</param>
    /// <param name="celsius">Temperature of the die, °C.</param>
    /// <param name="reference">Reference temperature of the camera, °C.</param>
    public static double PeakElectrons(Glow glow, double exposure, double celsius, double reference)
    {
        if (exposure <= 0)
        {
            return 0;
        }
        double byTemperature =
            glow.ActivationEnergy is { } energy ? DefectEnergy.Boltzmann(energy, celsius, reference)
            : glow.DoublingTemperature is { } doubling ? Math.Pow(2, (celsius - reference) / doubling)
            : 1;
        if (glow.WarmUp is { } rise)
        {
            double time = glow.WarmUpTime ?? UsualWarmUpSeconds;
            double late = exposure - time * (1 - Math.Exp(-exposure / time));
            return glow.Rate * (exposure + rise * late) * byTemperature;
        }
        return glow.Rate
            * exposure
            * Math.Pow(exposure / glow.ReferenceExposure, glow.ExposureExponent - 1)
            * byTemperature;
    }

    private static double At(Glow glow, int column, int row, int width, int height)
    {
        double x = (glow.X ?? width) - 1;
        double y = (glow.Y ?? height) - 1;
        double square = (column - x) * (column - x) + (row - y) * (row - y);
        return glow.Shape switch
        {
            GlowShape.LeftEdge => Math.Exp(-column / glow.Width) * Along(glow, row),
            GlowShape.RightEdge => Math.Exp(-(width - 1 - column) / glow.Width) * Along(glow, row),
            GlowShape.FirstRowEdge => Math.Exp(-row / glow.Width),
            GlowShape.LastRowEdge => Math.Exp(-(height - 1 - row) / glow.Width),
            GlowShape.Corner => Math.Exp(-Math.Sqrt(square) / glow.Width),
            _ => Math.Exp(-square / (2 * glow.Width * glow.Width)),
        };
    }

    private static double Along(Glow glow, int row)
    {
        double distance = glow.Y is { } centre ? (row + 1 - centre) / glow.Length : 0;
        return Math.Exp(-0.5 * distance * distance);
    }
}
