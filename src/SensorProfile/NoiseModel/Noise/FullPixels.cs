using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>
/// Pixels that dark current and sky fill within one light: their light is lost, and no dark brings it back.
/// </summary>
internal static class FullPixels
{
    internal const double Many = 0.001; // from here on a warning: one pixel in a thousand

    /// <summary>
    /// Why white lights need no other answer: the sky, or sky and dark current, fill the well of the typical pixel.
    /// Null where they do not, or where the full well is not known.
    /// </summary>
    /// <param name="reader">The camera.</param>
    /// <param name="sky">The sky.</param>
    /// <param name="exposureSeconds">s.</param>
    /// <param name="celsius">Sensor temperature; null asks for the sky alone.</param>
    internal static DecisionRefusedException? White(
        SensorReader reader,
        SkyRate sky,
        double exposureSeconds,
        double? celsius
    ) =>
        White(reader.Best.FullWell, sky, celsius is double t ? reader.Best.Law.RateAt(t) : 0, exposureSeconds, celsius);

    /// <summary>The same from plain numbers.</summary>
    /// <param name="well">Full well, e-; infinite where it is not known.</param>
    /// <param name="sky">The sky.</param>
    /// <param name="dark">Dark rate of the typical pixel, e-/px/s.</param>
    /// <param name="exposureSeconds">s.</param>
    /// <param name="celsius">Sensor temperature of that rate; null for the sky alone.</param>
    internal static DecisionRefusedException? White(
        double well,
        SkyRate sky,
        double dark,
        double exposureSeconds,
        double? celsius
    )
    {
        bool alone = sky.Rate.Value * exposureSeconds >= well;
        if (!alone && (sky.Rate.Value + dark) * exposureSeconds < well)
            return null;
        double full = well / (sky.Rate.Value + (alone ? 0 : dark));
        string filled = alone ? "The sky alone fills" : $"At {Plain.Celsius(celsius!.Value)} sky and dark current fill";
        return Refuse.CannotTell(
            FindingCodes.WellFills,
            $"{filled} the full well of {Plain.Number(well, 3)} e⁻ within {Plain.Number(full, 3)} s, so lights of "
                + $"{Plain.Seconds(exposureSeconds)} are white: "
                + (
                    alone
                        ? "no temperature, dark or flat can rescue them. Expose shorter."
                        : "no dark or flat can rescue them. Expose shorter, or cool."
                )
        );
    }

    /// <summary>
    /// The sky asked for; without one, the named skies except those under which such lights turn white.
    /// </summary>
    /// <param name="reader">The camera.</param>
    /// <param name="asked">The sky; null for the named ones.</param>
    /// <param name="exposureSeconds">s.</param>
    /// <exception cref="DecisionRefusedException">No sky is left.</exception>
    internal static IReadOnlyList<SkyRate> Skies(SensorReader reader, SkyRate? asked, double exposureSeconds)
    {
        SkyRate[] all = asked is null ? [.. NamedSkies.All] : [asked];
        SkyRate[] left = [.. all.Where(sky => White(reader, sky, exposureSeconds, null) is null)];
        return left.Length > 0 ? left : throw White(reader, all[0], exposureSeconds, null)!;
    }

    /// <summary>Names the usual skies that <see cref="Skies"/> leaves out.</summary>
    internal static IEnumerable<Finding> LeftOut(SensorReader reader, SkyRate? asked, double exposureSeconds) =>
        from sky in asked is null ? NamedSkies.All : []
        let white = White(reader, sky, exposureSeconds, null)
        where white is not null
        select new Finding(white.Code, Severity.Note, $"Left out, {sky.Name}: {white.Message}");

    /// <summary>The finding about full pixels; none when not a single pixel of the sensor is full.</summary>
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
        return
        [
            new Finding(
                FindingCodes.PixelsFull,
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
