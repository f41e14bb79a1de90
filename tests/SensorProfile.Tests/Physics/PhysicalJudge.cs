using SensorProfile.NoiseModel;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Sensors;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Tests.Physics;

/// <summary>
/// What is true of a simulated sensor, from the rate of every pixel at every temperature: no formula of the library's
/// decisions is used.
/// </summary>
internal sealed class PhysicalJudge(Sensor sensor)
{
    internal static PhysicalJudge Of(CameraDescription camera) => new(new SimulatedNight(camera, 1).Sensor);

    /// <summary>True mean rates over an exposure, e-/px/s.</summary>
    internal float[] Rates(double celsius, double exposure) => TrueMaps.DarkRate(sensor, celsius, exposure);

    /// <summary>True rate of the median pixel, e-/px/s.</summary>
    internal double Typical(double celsius, double exposure)
    {
        float[] rates = [.. Rates(celsius, exposure).Order()];
        return rates[rates.Length / 2];
    }

    /// <summary>
    /// Warmest darks, °C above the lights, whose glow stays below half the stack's noise of a typical pixel at its peak.
    /// </summary>
    internal double GlowTolerance(double celsius, double exposure, double sky, int lights)
    {
        CameraDescription camera = sensor.Camera;
        double noise = Math.Sqrt(
                (sky + Typical(celsius, exposure)) * exposure
                    + camera.ReadNoise * camera.ReadNoise
                    + camera.Gain * camera.Gain / 12
            ),
            least = Peak(0);
        double low = 0,
            high = 40;
        while (high - low > 0.001)
        {
            double middle = (low + high) / 2;
            if ((Peak(middle) - least) * exposure > 0.5 * noise / Math.Sqrt(lights))
                high = middle;
            else
                low = middle;
        }
        return low;
        double Peak(double warmer) => TrueMaps.Glow(sensor, celsius + warmer, exposure).Max();
    }

    /// <summary>
    /// Share of the pixels whose dark current raises the noise of one light by more than the loss: √((S + I)t + R² + q²)
    /// over √(St + R² + q²).
    /// </summary>
    internal double ShareBeyondLoss(double celsius, double exposure, double sky, double loss)
    {
        CameraDescription camera = sensor.Camera;
        double dark = sky * exposure + camera.ReadNoise * camera.ReadNoise + camera.Gain * camera.Gain / 12,
            most = dark * ((1 + loss) * (1 + loss) - 1) / exposure;
        float[] rates = Rates(celsius, exposure);
        return rates.Count(r => r > most) / (double)rates.Length;
    }

    /// <summary>Extra noise of the pixel that a share of the pixels do not exceed.</summary>
    internal double ExtraAtShare(double share, double celsius, double exposure, double sky)
    {
        CameraDescription camera = sensor.Camera;
        double dark = sky * exposure + camera.ReadNoise * camera.ReadNoise + camera.Gain * camera.Gain / 12;
        float[] rates = [.. Rates(celsius, exposure).Order()];
        return Math.Sqrt(1 + rates[(int)(share * (rates.Length - 1))] * exposure / dark) - 1;
    }

    /// <summary>Warmest temperature at which the share of the pixels keeps the loss, °C; NaN below −60 °C.</summary>
    internal double Setpoint(double share, double exposure, double sky, double loss)
    {
        double low = -60,
            high = 20;
        if (ShareBeyondLoss(low, exposure, sky, loss) > 1 - share)
            return double.NaN;
        while (high - low > 0.01)
        {
            double middle = (low + high) / 2;
            if (ShareBeyondLoss(middle, exposure, sky, loss) > 1 - share)
                high = middle;
            else
                low = middle;
        }
        return low;
    }

    /// <summary>
    /// Warmest darks, °C above the lights, that leave no more than a share of the places beyond a number of times the
    /// noise of the stack; by doing it.
    /// </summary>
    internal double HotTolerance(StackConditions stack, double share, double times, int places, int seed)
    {
        float[] lights = Rates(stack.TemperatureCelsius, stack.ExposureSeconds);
        double low = 0,
            high = 40;
        var procedure = new StackProcedure(stack, sensor.Camera, lights, places, seed);
        // as finely as the places tell it, for a tolerance of a hundredth of a degree too
        for (int i = 0; i < 11 || (i < 18 && high - low > 0.02 * high); i++)
        {
            double middle = i < 4 ? low + (high - low) / 4 : (low + high) / 2;
            float[] darks = Rates(stack.TemperatureCelsius + middle, stack.ExposureSeconds);
            if (procedure.ShareBeyond(darks, times) > share)
                high = middle;
            else
                low = middle;
        }
        return (low + high) / 2;
    }
}
