namespace SensorProfile.Drift.OverTheYears;

/// <summary>When darks taken at the last date would cost a stack more than its limits allow.</summary>
/// <param name="Mode">Settings it holds for, in words.</param>
/// <param name="DateUtc">The best estimate; null when the trend never gets there.</param>
/// <param name="EarliestUtc">Earliest date within the 95 % band of the trend; null when there is none.</param>
/// <param name="LatestUtc">Latest such date; null when there is none.</param>
/// <param name="Cause">What limits the library; null when nothing does.</param>
/// <param name="Lights">Lights of the stack that it serves.</param>
/// <param name="ExposureSeconds">Exposure of one of them, s.</param>
/// <param name="Loss">Accepted rise of the noise, 0.05 = 5 %.</param>
internal sealed record LibraryForecast(
    string Mode,
    DateTimeOffset? DateUtc,
    DateTimeOffset? EarliestUtc,
    DateTimeOffset? LatestUtc,
    LibraryLimit? Cause,
    int Lights,
    double ExposureSeconds,
    double Loss
);

/// <summary>What limits how long darks serve.</summary>
internal enum LibraryLimit
{
    /// <summary>The ordinary pixels.</summary>
    Typical,

    /// <summary>Hot pixels that brighten.</summary>
    HotPixels,

    /// <summary>The glow.</summary>
    Glow,

    /// <summary>The level of the background.</summary>
    Level,

    /// <summary>New hot pixels, which old darks lack.</summary>
    NewHotPixels,
}
