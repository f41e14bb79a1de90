using SensorProfile.Simulation.Parameters.Sensor;

namespace SensorProfile.Simulation.Sensors;

/// <summary>Applies the years to the parameters of a camera.</summary>
internal static class AgedCamera
{
    /// <summary>
    /// The camera with the values that hold at its age. Hot pixels are left to <see cref="HotPixelPopulation"/>.
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
