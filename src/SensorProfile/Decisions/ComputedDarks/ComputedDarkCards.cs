using SensorProfile.Fits;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>The header of a computed dark: what it stands for, and how far it can be trusted.</summary>
internal static class ComputedDarkCards
{
    /// <summary>The cards.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">The mode that it is computed for.</param>
    /// <param name="question">Temperature and exposure.</param>
    /// <param name="test">The trials that apply to it.</param>
    /// <param name="typical">Median standard uncertainty of ordinary pixels, e-.</param>
    /// <param name="refused">Number of pixels for which no uncertainty is claimed.</param>
    internal static IEnumerable<FitsCard> Of(
        CameraProfile profile,
        ModeProfile mode,
        DarkPredictionQuestion question,
        PredictionTest test,
        double typical,
        long refused
    )
    {
        yield return FitsCard.Of("IMAGETYP", "Master Dark", "computed, not taken");
        yield return FitsCard.Of("EXPTIME", question.ExposureSeconds, "[s] exposure it is computed for");
        yield return FitsCard.Of("CCD-TEMP", question.TemperatureCelsius, "[degC] temperature it is computed for");
        yield return FitsCard.Of("INSTRUME", profile.Camera.Name, "camera");
        if (mode.Settings.Gain is { } gain)
            yield return FitsCard.Of("GAIN", gain, "gain setting");
        if (mode.Settings.Offset is { } offset)
            yield return FitsCard.Of("OFFSET", offset, "offset setting");
        if (mode.Settings.Iso is { } iso)
            yield return FitsCard.Of("ISOSPEED", iso, "ISO setting");
        string[] binning = mode.Settings.Binning.Split('x');
        if (binning is [string x, string y] && int.TryParse(x, out int across) && int.TryParse(y, out int along))
        {
            yield return FitsCard.Of("XBINNING", across);
            yield return FitsCard.Of("YBINNING", along);
        }
        if (mode.Settings.Readout is { Length: > 0 } readout)
            yield return FitsCard.Of("READOUTM", readout);
        if (profile.Camera.ColourFilter is { } filter)
            yield return FitsCard.Of("BAYERPAT", filter, "from the first row of the file");
        yield return FitsCard.Of("CONTENT", "Master dark computed from per-pixel maps, pedestal included");
        yield return FitsCard.Of(
            "CREATOR",
            $"{profile.Software.Name} {profile.Software.Version}",
            "that made the maps"
        );
        yield return FitsCard.Of("INDIGEST", profile.Frames.InputDigest, "digest of the frames behind the maps");
        yield return FitsCard.Of("DKUNCERT", typical, "[e-] median standard uncertainty, ordinary pixels");
        if (test.Typical is { } ordinary)
            yield return FitsCard.Of(
                "DKCOVTYP",
                Math.Round(ordinary.Coverage, 4),
                "left-out ordinary pixels within 95 %"
            );
        if (test.Hot is { } hot)
            yield return FitsCard.Of("DKCOVHOT", Math.Round(hot.Coverage, 4), "left-out hot pixels within 95 %");
        if (test.Glow is { } glow)
            yield return FitsCard.Of(
                "DKCOVGLO",
                Math.Round(glow.Coverage, 4),
                "left-out pixels in the glow within 95 %"
            );
        if (refused > 0)
            yield return FitsCard.Of("DKREFUSD", refused, "pixels of which no uncertainty is claimed");
    }
}
