using SensorProfile.Fits;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.Pixels.Strips;
using SensorProfile.Profiles;

namespace SensorProfile.Characterisation.Maps;

/// <summary>Writes the per-pixel maps as FITS images and the defect pixels as a table.</summary>
public static class MapFiles
{
    /// <summary>
    /// Writes <c>maps/*.fits</c> (with several modes <c>maps/&lt;mode&gt;/*.fits</c>) and <c>tables/defects.csv</c>
    /// below a folder; what was not measured is left out.
    /// </summary>
    /// <remarks>
    /// float32, not a number where not measured; defects as uint8, keyed in the header. A file has its final name only
    /// when it is complete.
    /// </remarks>
    /// <param name="result">What was measured.</param>
    /// <param name="folder">Destination folder, created if missing. Files of the same names are replaced.</param>
    /// <returns>Full paths of the files written.</returns>
    /// <exception cref="IOException">The disk is full or the folder cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written to.</exception>
    public static IReadOnlyList<string> Write(CharacterisationResult result, string folder)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        var written = new List<string>();
        IReadOnlyList<string> names = ModeLabel.Folders(result.Profile.Modes);
        for (int i = 0; i < result.Maps.Count; i++)
        {
            string place = Path.Combine(Path.GetFullPath(folder), "maps", result.Maps.Count > 1 ? names[i] : "");
            written.AddRange(WriteMode(result.Profile, result.Profile.Modes[i], result.Maps[i], place));
        }
        if (DefectTable.Write(result, Path.Combine(Path.GetFullPath(folder), "tables", "defects.csv")) is { } table)
            written.Add(table);
        return written;
    }

    private static List<string> WriteMode(CameraProfile profile, ModeProfile mode, ModeMaps maps, string place)
    {
        var written = new List<string>();
        void Put(string name, FitsImage image)
        {
            Directory.CreateDirectory(place);
            string path = Path.Combine(place, name);
            FitsWriter.Write(path, image, overwrite: true);
            written.Add(path);
        }
        void Made(string name, Func<float[]?> make, string unit, string what)
        {
            if (make() is { } map)
                Put(
                    name,
                    new FitsImage<float>(
                        maps.Width,
                        maps.Height,
                        map,
                        [FitsCard.Of("BUNIT", unit), .. Provenance(profile, mode, what)]
                    )
                );
        }
        // Made and released one by one: together they would take most of the memory of the whole run.
        (string Name, Func<float[]?> Make, string Unit, string What)[] all =
        [
            ("dark-rate.fits", () => maps.DarkRate, "e-/px/s", "Dark rate at REFTEMP, glow included"),
            (
                "dark-rate-uncertainty.fits",
                () => maps.DarkRateUncertainty,
                "e-/px/s",
                "Standard uncertainty of the dark rate by temporal noise"
            ),
            // under its own name: programs that read dark-rate.fits expect electrons
            ("dark-rate-adu.fits", () => maps.DarkRateAdu, "ADU/px/s", "Dark rate at REFTEMP, no gain is known"),
            ("read-noise.fits", maps.ReadNoiseMap, "e-", "Temporal standard deviation without light"),
            ("glow.fits", maps.GlowMap, "e-/px/s", "Glow at REFTEMP"),
            ("doubling.fits", maps.DoublingMap, "degC", "Temperature rise that doubles the dark rate at REFTEMP"),
            (
                "doubling-uncertainty.fits",
                () => maps.DoublingUncertainty?.Invoke(),
                "degC",
                "Standard uncertainty of the doubling, hot pixels only"
            ),
            ("pedestal.fits", () => maps.Pedestal, "ADU", "Mean level without light and exposure"),
            (
                "pedestal-uncertainty.fits",
                () => maps.PedestalUncertainty?.Invoke(),
                "ADU",
                "Standard uncertainty of the pedestal"
            ),
        ];
        foreach ((string name, Func<float[]?> make, string unit, string what) in all)
        {
            Made(name, make, unit, what);
            MapMemory.Release((long)maps.Width * maps.Height);
        }
        if (maps.Defects is not null)
            Put(
                "defects.fits",
                new FitsImage<byte>(
                    maps.Width,
                    maps.Height,
                    maps.Defects,
                    [
                        FitsCard.Of("BUNIT", ""),
                        .. Provenance(profile, mode, "Defects, sums of the DEF... values; 0 = sound"),
                        .. Keys(mode),
                    ]
                )
            );
        return written;
    }

    private static IEnumerable<FitsCard> Provenance(CameraProfile profile, ModeProfile mode, string what)
    {
        yield return FitsCard.Of("CONTENT", what);
        yield return FitsCard.Of("INSTRUME", profile.Camera.Name, "camera");
        yield return FitsCard.Of("CAMMODE", ModeLabel.Text(mode.Settings), "settings of the camera");
        if (mode.Settings.Gain is { } gain)
            yield return FitsCard.Of("GAIN", gain, "gain setting");
        if (mode.Settings.Offset is { } offset)
            yield return FitsCard.Of("OFFSET", offset, "offset setting");
        if ((mode.FixedPattern?.ReferenceTemperature ?? mode.HotPixelsAdu?.ReferenceTemperature) is { } reference)
            yield return FitsCard.Of("REFTEMP", reference, "[degC] temperature the rates hold for");
        yield return FitsCard.Of("CREATOR", $"{profile.Software.Name} {profile.Software.Version}");
        yield return FitsCard.Of("INDIGEST", profile.Frames.InputDigest, "digest of the frames behind it");
        yield return FitsCard.OfComment(
            "Not a number where nothing was measured. Same size and orientation as the frames."
        );
    }

    private static IEnumerable<FitsCard> Keys(ModeProfile mode)
    {
        foreach ((DefectClass found, string keyword, string word) in DefectWords.All)
            yield return FitsCard.Of(keyword, (long)found, word);
        if (mode.HotPixelsAdu is { } hot)
            yield return FitsCard.Of("THRHOT", hot.HotRate, "[ADU/px/s] hot above the typical pixel by this");
        if (mode.FixedPattern?.Thresholds is not { } thresholds)
            yield break;
        yield return FitsCard.Of("THRHOT", thresholds.HotRate, "[e-/px/s] hot above the typical pixel by this");
        yield return FitsCard.Of("THRWARM", thresholds.WarmRate, "[e-/px/s] warm above the typical pixel by this");
        yield return FitsCard.Of("THRSIGMA", thresholds.Significance, "and by this many standard errors");
    }
}
