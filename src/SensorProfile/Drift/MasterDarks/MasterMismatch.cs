using SensorProfile.Profiles;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>A master whose hot pixels contradict the exposure or temperature in its header.</summary>
internal static class MasterMismatch
{
    private const double Mismatch = 0.1,
        ElectronsAlike = 0.15;

    public static HeaderContradiction? Find(
        StackRuler ruler,
        MasterDark master,
        MasterScale scale,
        CameraProfile? profile
    )
    {
        if (
            scale.Ratio is not { } ratio
            || Math.Abs(ratio.Value - 1) <= Math.Max(Mismatch, 4 * ratio.StandardUncertainty)
        )
            return null;
        double? doubling = profile?.Modes.Select(HotDoubling).FirstOrDefault(d => d is > 0);
        return new HeaderContradiction(
            ratio.Value,
            master.Exposure / ratio.Value,
            doubling * Math.Log2(ratio.Value),
            !master.SaysElectrons
                && ruler.Gain is { } k
                && Math.Abs(Math.Log(ratio.Value * scale.Scale * k.Value)) < ElectronsAlike
        );
    }

    /// <summary>
    /// Doubling temperature of the hot pixels, whose signal is compared; that of the typical pixel when theirs is
    /// unknown.
    /// </summary>
    private static double? HotDoubling(ModeProfile mode) =>
        mode.FixedPattern?.DoublingByRate.Where(c => c.RateFrom >= (mode.FixedPattern.Thresholds?.HotRate ?? 0))
            .MaxBy(c => c.Pixels)
            ?.Doubling.Value
        ?? mode.DarkCurrent?.DoublingTemperature?.Value;
}
