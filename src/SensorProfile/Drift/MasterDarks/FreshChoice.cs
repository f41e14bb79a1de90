using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Finds the fresh darks that a master can be compared with.</summary>
internal static class FreshChoice
{
    private const double SameExposure = 0.02;

    /// <summary>The set, or why there is none.</summary>
    public static (FrameSet? Set, string? Why) Of(
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
            return (null, "there is no set of two or more fresh darks; take at least 4 like those of the master");
        FrameSet[] sized = [.. darks.Where(s => s.Width == master.Width && s.Height == master.Height)];
        if (sized.Length == 0 && OfAnotherSize(master, darks, options) is { } other)
            return (other, null);
        if (sized.Length == 0)
            return (null, SizesDiffer(master, darks[0]));
        if (profile is not null && (profile.Camera.Width != master.Width || profile.Camera.Height != master.Height))
            return (
                null,
                $"the profile is of a camera of {Said.Whole(profile.Camera.Width)} × {Said.Whole(profile.Camera.Height)} px"
            );
        FrameSet[] alike = [.. sized.Where(s => ModeChoice.Matches(master.Settings, s.Settings))];
        if (alike.Length == 0)
            return (
                null,
                $"the fresh darks were taken at {ModeChoice.Name(sized[0].Settings)}, the master at "
                    + $"{ModeChoice.Name(master.Settings)}"
            );
        FrameSet[] fitting = [.. alike.Where(s => Fits(master, s, options))];
        if (fitting.Length > 0)
            return (
                fitting
                    .OrderByDescending(s => s.Frames.Count)
                    .ThenBy(s => Math.Abs((s.TemperatureCelsius ?? 0) - (master.Temperature ?? 0)))
                    .First(),
                null
            );
        return (
            null,
            $"no fresh darks like it ({Conditions(master.Exposure, master.Temperature)}): those given are "
                + $"{string.Join("; ", alike.Select(s => Conditions(s.ExposureSeconds, s.TemperatureCelsius)))}"
        );
    }

    /// <summary>"the master is … px and the fresh darks are … px; binning or cropping differs".</summary>
    public static string SizesDiffer(MasterDark master, FrameSet fresh) =>
        $"the master is {Said.Whole(master.Width)} × {Said.Whole(master.Height)} px and the fresh darks "
        + $"are {Said.Whole(fresh.Width)} × {Said.Whole(fresh.Height)} px; binning or cropping differs";

    /// <summary>
    /// Fresh darks like it but for their size: turned by 90°, cropped or binned, which the hot pixels will tell.
    /// </summary>
    private static FrameSet? OfAnotherSize(MasterDark master, FrameSet[] darks, DarkLibraryOptions options) =>
        darks
            .Where(s =>
                ModeChoice.Matches(master.Settings with { Binning = s.Settings.Binning }, s.Settings)
                && Fits(master, s, options)
            )
            .MaxBy(s => s.Frames.Count);

    /// <summary>"300 s, −10 °C".</summary>
    public static string Conditions(double? exposure, double? temperature) =>
        $"{(exposure is double s ? Said.Seconds(s) : "exposure unknown")}, "
        + $"{(temperature is double c ? Said.Celsius(c) : "temperature unknown")}";

    private static bool Fits(MasterDark master, FrameSet set, DarkLibraryOptions options) =>
        (master.Exposure is not double t || set.ExposureSeconds is not double s || Math.Abs(s - t) <= SameExposure * t)
        && (
            master.Temperature is not double a
            || set.TemperatureCelsius is not double b
            || Math.Abs(a - b) <= options.TemperatureTolerance
        );
}
