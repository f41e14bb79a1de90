using SensorProfile.Drift.OverTheYears;
using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Years;

/// <summary>Whether the temperature probe or the dark current drifted, in words.</summary>
internal static class ProbeWords
{
    public static string Phrase(ProbeOrAgeing judged) =>
        (judged.Verdict, judged.Gap) switch
        {
            (ProbeVerdict.Probe, _) => Alone(judged.StepOfHotPixels!),
            (ProbeVerdict.Both, _) => Together(judged.StepOfTypical!, judged.StepOfHotPixels!),
            (ProbeVerdict.Ageing, _) =>
                "The typical pixel changed and the hot pixels did not: the dark current itself changed, the temperature "
                    + "probe did not.",
            (ProbeVerdict.CannotTell, ProbeGap.NoMaps) =>
                "Cannot tell whether the sensor or its temperature probe changed without the maps of both profiles, "
                    + "whose hot pixels would show it: keep the folder 'maps' beside each profile, or characterise the "
                    + "old frames again.",
            (ProbeVerdict.CannotTell, ProbeGap.FewHotPixels) =>
                "Cannot tell whether the sensor or its temperature probe changed: too few hot pixels were measured well "
                    + "in both profiles.",
            (ProbeVerdict.CannotTell, _) =>
                "The dark current changed, but the hot pixels fit both a probe that drifted and one that did not: more "
                    + "frames or warmer darks would tell.",
            (_, null) => "Neither the dark current nor the temperature probe has changed beyond the errors.",
            _ => "The dark current has not changed beyond its errors.",
        };

    /// <summary>"0.98 °C higher": the setting that brings the sensor back to its old temperature.</summary>
    public static string Setting(Measurement hot) =>
        $"{Plain.Celsius(Math.Abs(hot.Value))} {(hot.Value > 0 ? "lower" : "higher")}";

    private static string Alone(Measurement hot) =>
        $"The pixels, hot ones too, changed as if the sensor were {Felt(hot)} at the same reading: the "
        + "temperature probe drifted, and the dark current shows no change of its own beyond the errors. "
        + $"Set the cooler {Setting(hot)} to match the old darks again.";

    private static string Together(Measurement step, Measurement hot) =>
        $"At the same reading the hot pixels changed as if the sensor were {Felt(hot)}, the typical pixel "
        + $"as if it were {Felt(step)}: most likely the temperature probe drifted and the dark current "
        + "changed as well; hot pixels that had aged too would look the same.";

    /// <summary>"0.3 °C colder".</summary>
    private static string Felt(Measurement step) =>
        $"{Plain.Celsius(Math.Abs(step.Value))} {(step.Value > 0 ? "warmer" : "colder")}";
}
