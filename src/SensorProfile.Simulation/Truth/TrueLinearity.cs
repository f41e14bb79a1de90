using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Truth;

/// <summary>Linearity error of the bent response, as measured without noise.</summary>
internal static class TrueLinearity
{
    private const int Levels = 91;

    /// <summary>
    /// Fits a straight line of signal against light through levels spread evenly over 5 %…95 % of saturation, with
    /// relative weights 1/signal² (EMVA Standard 1288, Release 4.0 Linear, minimises relative deviations), and returns
    /// the mean absolute relative deviation, %.
    /// </summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="fullWell">Charge at saturation, e-.</param>
    public static double ErrorPercent(Sensor sensor, double fullWell)
    {
        double bend = sensor.Camera.Nonlinearity / sensor.FullScaleElectrons;
        if (bend == 0)
        {
            return 0;
        }
        double[] light = [.. Enumerable.Range(0, Levels).Select(i => fullWell * (0.05 + 0.9 * i / (Levels - 1)))];
        double[] signal = [.. light.Select(n => n * (1 - bend * n))];
        double s = 0,
            sx = 0,
            sy = 0,
            sxx = 0,
            sxy = 0;
        for (int i = 0; i < Levels; i++)
        {
            double weight = 1 / (signal[i] * signal[i]);
            s += weight;
            sx += weight * light[i];
            sy += weight * signal[i];
            sxx += weight * light[i] * light[i];
            sxy += weight * light[i] * signal[i];
        }
        double slope = (s * sxy - sx * sy) / (s * sxx - sx * sx);
        double intercept = (sy - slope * sx) / s;
        return 100 * light.Select((n, i) => Math.Abs(signal[i] / (intercept + slope * n) - 1)).Average();
    }
}
