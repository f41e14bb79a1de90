using SensorProfile.Simulation.Parameters.Sensor;

namespace SensorProfile.Simulation.Sensors;

/// <summary>Applies ageing to the parameters of a camera.</summary>
internal static class AgedCamera
{
    /// <summary>
    /// The camera with its parameters at its age. <see cref="HotPixelPopulation"/> handles the hot pixels.
    /// </summary>
    public static CameraDescription Age(CameraDescription camera)
    {
        Ageing ageing = camera.Ageing;
        double years = camera.AgeYears;
        return camera with
        {
            Gain = camera.Gain * Grown(ageing.GainDrift, years),
            ReadNoise = camera.ReadNoise * Grown(ageing.ReadNoiseGrowth, years),
            DarkCurrent = camera.DarkCurrent is { } dark
                ? dark with
                {
                    RateAtReference = dark.RateAtReference * Grown(ageing.DarkGrowth, years),
                }
                : null,
            Glow = [.. camera.Glow.Select(g => g with { Rate = g.Rate * Grown(ageing.GlowGrowth, years) })],
            Thermometer = camera.Thermometer with
            {
                ProbeOffset = camera.Thermometer.ProbeOffset + ageing.ProbeDrift * years,
            },
        };
    }

    private static double Grown(double perYear, double years) => Math.Pow(1 + perYear, years);
}
