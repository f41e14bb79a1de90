using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// Pixels that dark current and sky fill within one light: their light is lost, and no dark brings it back.
/// </summary>
internal static class FullPixels
{
    private const double MaxShare = 0.5; // more than outliers: only a shorter exposure helps
    internal const double Many = 0.001; // from here on a warning: one pixel in a thousand

    /// <summary>What to say about them; nothing when not one pixel of the sensor is full.</summary>
    /// <param name="reader">The camera.</param>
    /// <param name="sky">e-/px/s.</param>
    /// <param name="exposureSeconds">s.</param>
    /// <param name="celsius">Sensor temperature.</param>
    internal static IEnumerable<Finding> Findings(
        SensorReader reader,
        double sky,
        double exposureSeconds,
        double celsius
    )
    {
        double share = reader.Best.ShareFull(sky, exposureSeconds, celsius),
            pixels = share * reader.Camera.Width * reader.Camera.Height;
        if (pixels < 1)
            return [];
        if (share > MaxShare)
            return
            [
                new Finding(
                    "pixels-full",
                    Severity.Warning,
                    $"At {Plain.Celsius(celsius)} sky and dark current fill {Plain.Percent(share)} of the pixels within "
                        + $"{Plain.Seconds(exposureSeconds)}: such a light shows nothing. Expose shorter."
                ),
            ];
        return
        [
            new Finding(
                "pixels-full",
                share > Many ? Severity.Warning : Severity.Note,
                $"At {Plain.Celsius(celsius)} about {Plain.Percent(share)} of the pixels ({Plain.Number(pixels, 2)}) "
                    + $"are full after {Plain.Seconds(exposureSeconds)}: their light is lost, and no dark brings it back. "
                    + "Dither and reject outliers, or expose shorter."
            ),
        ];
    }

    /// <summary>The share as a quantity, %; null when there are none.</summary>
    internal static Measurement? Share(SensorReader reader, double sky, double exposureSeconds, double celsius)
    {
        double share = reader.Best.ShareFull(sky, exposureSeconds, celsius);
        return share > 0 ? new Measurement(100 * share, 0, "%", 1, "pixels that sky and dark current fill") : null;
    }
}
