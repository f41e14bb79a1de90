using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Tests.Characterisation;

/// <summary>Shot lists for synthetic cameras.</summary>
internal static class Nights
{
    /// <summary>Bias frames, flat pairs spread evenly to beyond saturation, and darks.</summary>
    /// <param name="saturation">Photo-electrons at which the camera saturates, e-.</param>
    /// <param name="temperatures">Dark temperatures, °C.</param>
    /// <param name="exposures">Dark exposures, s.</param>
    /// <param name="darks">Frames of each.</param>
    /// <param name="bias">Bias frames.</param>
    /// <param name="flatTemperature">Temperature of bias and flats, °C.</param>
    public static Shot[] Full(
        double saturation,
        double[] temperatures,
        double[] exposures,
        int darks = 4,
        int bias = 16,
        double flatTemperature = -10
    ) =>
        [
            new()
            {
                Kind = FrameKind.Bias,
                Count = bias,
                Temperature = flatTemperature,
            },
            .. new[] { 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.05, 1.3 }.Select(
                (share, i) =>
                    new Shot
                    {
                        Kind = FrameKind.Flat,
                        Exposure = 10 * share,
                        Level = share * saturation,
                        Count = 2,
                        Temperature = flatTemperature,
                    }
            ),
            .. temperatures.SelectMany(t =>
                exposures.Select(e => new Shot
                {
                    Kind = FrameKind.Dark,
                    Exposure = e,
                    Temperature = t,
                    Count = darks,
                })
            ),
        ];
}
