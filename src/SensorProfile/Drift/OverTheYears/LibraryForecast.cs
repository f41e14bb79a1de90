namespace SensorProfile.Drift.OverTheYears;

/// <summary>When darks taken at the last date would cost a stack more than its limits allow.</summary>
/// <param name="Mode">Settings of the mode, in words.</param>
/// <param name="DateUtc">Best estimate; null when the trend never gets there.</param>
/// <param name="EarliestUtc">Earliest date within the 95 % band of the trend; null when there is none.</param>
/// <param name="LatestUtc">Latest such date; null when there is none.</param>
/// <param name="Cause">What limits the library; null when nothing does.</param>
/// <param name="Lights">Number of lights in the stack that the library serves.</param>
/// <param name="ExposureSeconds">Exposure of one light, s.</param>
/// <param name="Loss">Accepted relative rise of the noise, 0.05 = 5 %.</param>
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

/// <summary>What limits how long darks stay good.</summary>
internal enum LibraryLimit
{
    /// <summary>The ordinary pixels.</summary>
    Typical,

    /// <summary>Brightening hot pixels.</summary>
    HotPixels,

    /// <summary>The glow.</summary>
    Glow,

    /// <summary>The level of the background.</summary>
    Level,

    /// <summary>New hot pixels, which old darks lack.</summary>
    NewHotPixels,
}
