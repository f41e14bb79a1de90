using SensorProfile.Drift.Archive;

namespace SensorProfile.Drift.Identity;

/// <summary>The hot pixels of one session; its maps are read again only when these do not decide.</summary>
/// <param name="Profile">The session.</param>
/// <param name="Mode">Index of the mode whose maps were read.</param>
/// <param name="Hot">Its brightest hot pixels.</param>
internal sealed record SensorFingerprint(ProfileOnDisk Profile, int Mode, HotPixelSet Hot)
{
    /// <summary>Takes the first mode with maps; null when no mode has any.</summary>
    public static SensorFingerprint? Read(ProfileOnDisk profile, Func<ProfileOnDisk, int, (PixelRates?, Finding?)> read)
    {
        for (int mode = 0; mode < profile.Profile.Modes.Count; mode++)
            if (read(profile, mode).Item1 is { } rates)
                return new SensorFingerprint(
                    profile,
                    mode,
                    HotPixelSet.Find(rates, HotThreshold.Choose(profile.Profile.Modes[mode], rates.TypicalRate))
                );
        return null;
    }

    /// <summary>Compares a later session with this one: same sensor or another?</summary>
    public SensorIdentity Compare(SensorFingerprint later, Func<ProfileOnDisk, int, (PixelRates?, Finding?)> read) =>
        SensorIdentity.Compare(Hot, later.Hot, () =>
            read(Profile, Mode).Item1 is { } first && read(later.Profile, later.Mode).Item1 is { } last
                ? PatternCorrelation.Measure(first, last)
                : null
        );
}
