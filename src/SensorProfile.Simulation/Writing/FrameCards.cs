using System.Globalization;
using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Writing;

/// <summary>Header of a simulated frame.</summary>
internal static class FrameCards
{
    /// <summary>The cards, without those that a fault omits.</summary>
    /// <param name="camera">The camera at its age.</param>
    /// <param name="frame">The frame.</param>
    public static IReadOnlyList<FitsCard> Of(CameraDescription camera, SimulatedFrame frame)
    {
        var cards = new List<FitsCard>
        {
            FitsCard.Of("INSTRUME", camera.Name, "synthetic camera"),
            FitsCard.Of("IMAGETYP", Word(frame.Kind)),
            FitsCard.Of("EXPTIME", frame.ExposureSeconds, "[s] exposure"),
            FitsCard.Of(
                "DATE-OBS",
                frame.StartUtc.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fff", CultureInfo.InvariantCulture),
                "UTC, start of exposure"
            ),
        };
        if (frame.ReportedCelsius is { } reading)
        {
            cards.Add(FitsCard.Of("CCD-TEMP", reading, "[degC] sensor temperature"));
        }
        if (camera.Cooled)
        {
            cards.Add(FitsCard.Of("SET-TEMP", frame.TargetCelsius, "[degC] set point"));
        }
        cards.AddRange(Settings(camera));
        if (camera.ColourFilter is { } colours)
        {
            cards.Add(FitsCard.Of("BAYERPAT", colours, "from the first row of the file"));
            cards.Add(FitsCard.Of("XBAYROFF", 0));
            cards.Add(FitsCard.Of("YBAYROFF", 0));
            cards.Add(FitsCard.Of("ROWORDER", "TOP-DOWN"));
        }
        cards.Add(FitsCard.Of("CREATOR", "SensorProfile simulation"));
        HashSet<string> omitted = [.. frame.Faults.SelectMany(f => f.OmitKeywords)];
        cards.RemoveAll(c => omitted.Contains(c.Keyword));
        return cards;
    }

    private static IEnumerable<FitsCard> Settings(CameraDescription camera)
    {
        HeaderSettings settings = camera.Settings;
        if (settings.Gain is { } gain)
        {
            yield return FitsCard.Of("GAIN", gain, "setting");
        }
        if (settings.Offset is { } offset)
        {
            yield return FitsCard.Of("OFFSET", offset, "setting");
        }
        if (settings.Iso is { } iso)
        {
            yield return FitsCard.Of("ISOSPEED", iso);
        }
        if (settings.Readout is { } readout)
        {
            yield return FitsCard.Of("READOUTM", readout);
        }
        if (settings.ClaimedGainFactor is { } factor)
        {
            yield return FitsCard.Of("EGAIN", Math.Round(camera.Gain * factor, 4), "[e-/ADU] as the maker states");
        }
        yield return FitsCard.Of("XBINNING", 1);
        yield return FitsCard.Of("YBINNING", 1);
    }

    private static string Word(FrameKind kind) =>
        kind switch
        {
            FrameKind.Bias => "Bias Frame",
            FrameKind.Dark => "Dark Frame",
            FrameKind.Flat => "Flat Field",
            FrameKind.DarkFlat => "Dark Flat",
            _ => "Light Frame",
        };
}
