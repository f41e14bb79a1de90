using SensorProfile.Frames;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Finds the fresh darks to compare a master with.</summary>
internal static class FreshChoice
{
    private const double SameExposure = 0.02;

    /// <summary>The matching set, or why there is none.</summary>
    public static (FrameSet? Set, MasterReason? Why) Choose(
        MasterDark master,
        Inventory fresh,
        CameraProfile? profile,
        DarkLibraryOptions options
    )
    {
        FrameSet[] darks =
        [
            .. fresh.Sets.Where(s => s.Kind is FrameKind.Dark or FrameKind.DarkFlat && s.Frames.Count >= 2),
        ];
        if (darks.Length == 0)
            return (null, new MasterReason(MasterGround.NoFreshDarks));
        FrameSet[] sized = [.. darks.Where(s => s.Width == master.Width && s.Height == master.Height)];
        if (sized.Length == 0 && OfAnotherSize(master, darks, options) is { } other)
            return (other, null);
        if (sized.Length == 0)
            return (null, Why(MasterGround.OtherSize, master, darks[0]));
        if (profile is not null && (profile.Camera.Width != master.Width || profile.Camera.Height != master.Height))
            return (
                null,
                new MasterReason(MasterGround.OtherCamera)
                {
                    Master = Conditions(master),
                    Others = [new DarkConditions(profile.Camera.Width, profile.Camera.Height, null, null, null)],
                }
            );
        FrameSet[] alike = [.. sized.Where(s => ModeChoice.Matches(master.Settings, s.Settings))];
        if (alike.Length == 0)
            return (null, Why(MasterGround.OtherSettings, master, sized[0]));
        FrameSet[] fitting = [.. alike.Where(s => Fits(master, s, options))];
        if (fitting.Length > 0)
            return (
                fitting
                    .OrderByDescending(s => s.Frames.Count)
                    .ThenBy(s => Math.Abs((s.TemperatureCelsius ?? 0) - (master.Temperature ?? 0)))
                    .First(),
                null
            );
        return (null, Why(MasterGround.OtherConditions, master, alike));
    }

    /// <summary>A master and fresh darks that do not match.</summary>
    public static MasterReason Why(MasterGround ground, MasterDark master, params IEnumerable<FrameSet> fresh) =>
        new(ground) { Master = Conditions(master), Others = [.. fresh.Select(Conditions)] };

    private static DarkConditions Conditions(MasterDark master) =>
        new(master.Width, master.Height, master.Settings, master.Exposure, master.Temperature);

    private static DarkConditions Conditions(FrameSet set) =>
        new(set.Width, set.Height, set.Settings, set.ExposureSeconds, set.TemperatureCelsius);

    /// <summary>
    /// Fresh darks that match in all but size: turned by 90°, cropped or binned, which the hot pixels will reveal.
    /// </summary>
    private static FrameSet? OfAnotherSize(MasterDark master, FrameSet[] darks, DarkLibraryOptions options) =>
        darks
            .Where(s =>
                ModeChoice.Matches(master.Settings with { Binning = s.Settings.Binning }, s.Settings)
                && Fits(master, s, options)
            )
            .MaxBy(s => s.Frames.Count);

    private static bool Fits(MasterDark master, FrameSet set, DarkLibraryOptions options) =>
        (master.Exposure is not double t || set.ExposureSeconds is not double s || Math.Abs(s - t) <= SameExposure * t)
        && (
            master.Temperature is not double a
            || set.TemperatureCelsius is not double b
            || Math.Abs(a - b) <= options.TemperatureTolerance
        );
}
