using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Defects;

/// <summary>
/// Default thresholds: hot is ten times the rate of an ordinary pixel, rounded up to 1, 2 or 5 times a power of ten.
/// </summary>
internal static class ThresholdChoice
{
    private const double HotTimes = 10;
    private const double WarmDivisor = 5;

    /// <summary>Fills in thresholds that the user left open (rates of 0).</summary>
    /// <param name="given">Thresholds of the user; null for none.</param>
    /// <param name="scale">Typical rate, spread and noise of the pixels.</param>
    public static DefectThresholds For(DefectThresholds? given, ReferenceScale scale)
    {
        given ??= new();
        double ordinary = Math.Max(scale.Typical, scale.Spread);
        double hot =
            given.HotRate > 0
                ? given.HotRate
                : Math.Max(RoundNumbers.AtLeast(Math.Max(HotTimes * ordinary, 1e-6)), given.WarmRate);
        double warm = given.WarmRate > 0 ? given.WarmRate : hot / WarmDivisor;
        return given with { HotRate = hot, WarmRate = warm };
    }
}
