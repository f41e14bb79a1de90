using SensorProfile.Profiles;

namespace SensorProfile.Drift.Archive;

/// <summary>The excess over the typical pixel from which a pixel counts as hot.</summary>
internal static class HotThreshold
{
    private const double TimesTypical = 5; // used when the profile states no threshold
    private const double MinRate = 0.01; // e-/px/s; a fainter pixel does no harm

    /// <summary>Excess over the typical rate, e-/px/s: the profile's own threshold if it states one.</summary>
    public static double Choose(ModeProfile mode, double typicalRate) =>
        mode.FixedPattern?.Thresholds is { HotRate: > 0 } thresholds
            ? thresholds.HotRate
            : Math.Max(TimesTypical * typicalRate, MinRate);
}
