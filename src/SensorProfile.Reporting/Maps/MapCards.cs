using SensorProfile.Fits;
using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Maps;

/// <summary>Header cards that say what a map is and where it comes from.</summary>
internal static class MapCards
{
    public static IReadOnlyList<FitsCard> Of(MapKind kind, CameraProfile profile, int mode)
    {
        List<FitsCard> cards = [FitsCard.Of("BUNIT", kind.FitsUnit), .. Provenance(profile, mode)];
        if (kind.AtReference && profile.Modes[mode].DarkCurrent?.ReferenceTemperature is { } celsius) cards.Add(FitsCard.Of("REFTEMP", celsius, "[degC] reference temperature"));
        cards.Add(FitsCard.OfComment(kind.Comment + ". A map, not a frame; NaN where not measured."));
        return cards;
    }

    public static IReadOnlyList<FitsCard> OfDefects(CameraProfile profile, int mode) => [.. Provenance(profile, mode)];

    private static IEnumerable<FitsCard> Provenance(CameraProfile profile, int mode)
    {
        ModeSettings settings = profile.Modes[mode].Settings;
        yield return FitsCard.Of("INSTRUME", Ascii(profile.Camera.Name));
        if (settings.Gain is { } gain) yield return FitsCard.Of("GAIN", gain, "camera setting");
        if (settings.Offset is { } offset) yield return FitsCard.Of("OFFSET", offset, "camera setting");
        if (settings.Iso is { } iso) yield return FitsCard.Of("ISOSPEED", iso, "camera setting");
        yield return FitsCard.Of("CREATOR", Ascii($"{profile.Software.Name} {profile.Software.Version}"));
        yield return FitsCard.Of("DATE", profile.CreatedUtc.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss", System.Globalization.CultureInfo.InvariantCulture), "UTC, when the profile was made");
        if (profile.Frames.InputDigest.Length > 0) yield return FitsCard.Of("INDIGEST", profile.Frames.InputDigest, "digest of the frames used");
    }

    private static string Ascii(string text) => string.Concat(text.Select(c => c is >= ' ' and <= '~' ? c : '?'));
}
