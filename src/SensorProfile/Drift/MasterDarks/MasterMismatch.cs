using SensorProfile.NoiseModel;
using SensorProfile.Profiles;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>A master whose hot pixels contradict the exposure or temperature that its header states.</summary>
internal static class MasterMismatch
{
    private const double Mismatch = 0.1,
        ElectronsAlike = 0.15;

    public static string? Find(
        StackRuler ruler,
        MasterDark master,
        MasterScale scale,
        CameraProfile? profile,
        List<Finding> findings
    )
    {
        if (
            scale.Ratio is not { } ratio
            || Math.Abs(ratio.Value - 1) <= Math.Max(Mismatch, 4 * ratio.StandardUncertainty)
        )
            return null;
        string factor = QuantityText.Number(ratio.Value, 3);
        double? doubling = profile?.Modes.Select(HotDoubling).FirstOrDefault(d => d is > 0);
        string warmer = doubling is double d
            ? $" or a sensor {Said.Celsius(Math.Abs(d * Math.Log2(ratio.Value)))} {(ratio.Value > 1 ? "colder" : "warmer")}"
            : "";
        string exposure = master.Exposure is double t
            ? $"an exposure of {Said.Seconds(t / ratio.Value)}"
            : $"{Said.Number(1 / ratio.Value)} times the exposure";
        string electrons =
            !master.SaysElectrons
            && ruler.Gain is { } k
            && Math.Abs(Math.Log(ratio.Value * scale.Scale * k.Value)) < ElectronsAlike
                ? "; or its values are electrons, which its header does not say"
                : "";
        string sentence =
            $"its hot pixels hold {QuantityText.Number(1 / ratio.Value, 3)} times the signal of the fresh darks, "
            + $"as {exposure}{warmer} would give{electrons}";
        findings.Add(
            new Finding(
                "master-not-as-stated",
                Severity.Warning,
                $"{master.File} is not what its header says "
                    + $"({FreshChoice.Conditions(master.Exposure, master.Temperature)}): {sentence} (the fresh darks "
                    + $"hold {factor} times its signal).",
                [master.File]
            )
        );
        return sentence;
    }

    /// <summary>
    /// Doubling temperature of the hot pixels, whose signal is compared; of the typical pixel when theirs is not known.
    /// </summary>
    private static double? HotDoubling(ModeProfile mode) =>
        mode.FixedPattern?.DoublingByRate.Where(c => c.RateFrom >= (mode.FixedPattern.Thresholds?.HotRate ?? 0))
            .MaxBy(c => c.Pixels)
            ?.Doubling.Value
        ?? mode.DarkCurrent?.DoublingTemperature?.Value;
}
