namespace SensorProfile.Drift.OverTheYears;

/// <summary>When darks taken at the last date would cost a stack more than its limits allow.</summary>
/// <param name="Mode">Settings it holds for, in words.</param>
/// <param name="DateUtc">The best estimate; null when the trend never gets there.</param>
/// <param name="EarliestUtc">Earliest date within the 95 % band of the trend; null when there is none.</param>
/// <param name="LatestUtc">Latest such date; null when there is none.</param>
/// <param name="Cause">typical | hot-pixels | glow | level | new-hot-pixels: what limits the library; null when nothing
/// does.</param>
/// <param name="Sentence">In words.</param>
public sealed record LibraryForecast(
    string Mode,
    DateTimeOffset? DateUtc,
    DateTimeOffset? EarliestUtc,
    DateTimeOffset? LatestUtc,
    string? Cause,
    string Sentence
);
