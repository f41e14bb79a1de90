using SensorProfile.Fits;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.Archive;

/// <summary>
/// Dark rates of single pixels at a profile's reference temperature, from its maps or from the list of hot pixels that
/// an archive keeps.
/// </summary>
internal abstract class PixelRates
{
    private const int OrdinaryWanted = 20_000;

    /// <summary>Width, px.</summary>
    public required int Width { get; init; }

    /// <summary>Height, px.</summary>
    public required int Height { get; init; }

    /// <summary>Temperature the rates hold for, °C; null when unknown.</summary>
    public required double? ReferenceTemperature { get; init; }

    /// <summary>Rate of the median pixel, e-/px/s.</summary>
    public required double TypicalRate { get; init; }

    /// <summary>Rate and standard uncertainty of a pixel, e-/px/s; NaN when it was not measured.</summary>
    public abstract (double Rate, double Uncertainty) At(int index);

    /// <summary>Indices of the pixels with a rate above the given one, ascending.</summary>
    public abstract IEnumerable<int> Above(double rate);

    /// <summary>Doubling temperature of a pixel, °C; NaN when it was not measured.</summary>
    public abstract double Doubling(int index);

    /// <summary>Whether the pixel flickers: its rate changes from night to night without any ageing.</summary>
    public abstract bool Flickers(int index);

    /// <summary>Whether the rates of ordinary pixels were kept, not only those of hot ones.</summary>
    public virtual bool HoldsOrdinary => false;

    /// <summary>Ordinary pixels from which to measure the noise; null when only hot pixels were kept.</summary>
    public virtual IEnumerable<int>? Ordinary() => null;

    /// <summary>
    /// Reads the rates of one mode of a profile; null when it has none. A finding says why unusable maps were left out.
    /// </summary>
    public static (PixelRates? Rates, Finding? Finding) Read(ProfileOnDisk profile, int mode)
    {
        if (profile.MapsFolder is not { } maps)
            return (null, null);
        ModeProfile settings = profile.Profile.Modes[mode];
        double? reference = settings.FixedPattern?.ReferenceTemperature ?? settings.DarkCurrent?.ReferenceTemperature;
        string own = Path.Combine(maps, ModeLabel.Folders(profile.Profile.Modes)[mode]);
        string folder = Directory.Exists(own) || profile.Profile.Modes.Count > 1 ? own : maps;
        try
        {
            PixelRates? rates = (PixelRates?)MapRates.Read(folder, reference) ?? Archived(folder);
            return
                rates is null
                || (rates.Width == profile.Profile.Camera.Width && rates.Height == profile.Profile.Camera.Height)
                ? (rates, null)
                : (
                    null,
                    Refused(
                        profile,
                        $"they are {rates.Width} × {rates.Height} px, the camera {profile.Profile.Camera.Width} × "
                            + $"{profile.Profile.Camera.Height} px"
                    )
                );
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            return (
                null,
                Refused(
                    profile,
                    problem is FitsFormatException
                        ? problem.Message.TrimEnd('.')
                        : $"they cannot be read ({problem.Message.TrimEnd('.')})"
                )
            );
        }
    }

    /// <summary>Reads an archive's list, with the map of all pixels if it was kept.</summary>
    private static PixelRates? Archived(string folder) =>
        HotPixelListFile.Read(folder) is { } hot ? (PixelRates?)OrdinaryMapFile.Read(folder, hot) ?? hot : null;

    /// <summary>
    /// About 20 000 pixels spread over the sensor; the step is odd so that they do not all lie in a few columns.
    /// </summary>
    protected static IEnumerable<int> EvenSample(int pixels)
    {
        int step = Math.Max(1, pixels / OrdinaryWanted) | 1;
        return Enumerable.Range(0, (pixels + step - 1) / step).Select(i => i * step);
    }

    private static Finding Refused(ProfileOnDisk profile, string why) =>
        new(
            FindingCodes.MapsRefused,
            Severity.Warning,
            $"The maps beside {profile.File} were left out: {why}. Its pixels are not compared one by one; "
                + "characterise those frames again to restore them.",
            [profile.File]
        );
}
