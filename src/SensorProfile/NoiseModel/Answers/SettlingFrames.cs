using SensorProfile.Frames;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Answers;

/// <summary>Frames that would settle an open answer.</summary>
/// <param name="Kind">Bias, dark, flat or light.</param>
/// <param name="Exposure">s; null where the light decides or the shortest one is meant.</param>
/// <param name="Temperature">Sensor temperature, °C; null where it does not matter.</param>
/// <param name="Frames">How many more.</param>
/// <param name="Seconds">Clock time with read-out, s.</param>
internal sealed record SettlingFrames(FrameKind Kind, double? Exposure, double? Temperature, int Frames, double Seconds)
{
    private const double Overhead = 2; // read-out and saving, s
    private const int ForDistribution = 8;

    // s: shorter darks show no dark current, however short the lights are
    private const double MinLongest = 30;

    /// <summary>The advised darks of one exposure and temperature, enough to recognise a cosmic-ray hit.</summary>
    internal const int EachDark = 4;

    internal static SettlingFrames Of(FrameKind kind, double? exposure, double? celsius, int frames) =>
        new(kind, exposure, celsius, frames, frames * ((exposure ?? (kind == FrameKind.Flat ? 1 : 0)) + Overhead));

    /// <summary>Darks of one long exposure that show how dark current spreads over the pixels.</summary>
    internal static SettlingFrames OfDistribution(SensorReader reader, double otherwiseSeconds, double? celsius) =>
        Of(
            FrameKind.Dark,
            reader.LongestExposure > 0 ? reader.LongestExposure : otherwiseSeconds,
            celsius,
            ForDistribution
        );

    /// <summary>
    /// Darks of three exposures at a temperature outside the profile's range, to extend the range that far.
    /// </summary>
    internal static IReadOnlyList<SettlingFrames> NewTemperature(double longest, double celsius)
    {
        double most = Math.Max(longest, MinLongest);
        return
        [
            .. new[] { most / 10, most / 3, most }.Select(t =>
                Of(FrameKind.Dark, Math.Round(t, t < 10 ? 1 : 0), Math.Round(celsius), EachDark)
            ),
        ];
    }
}
