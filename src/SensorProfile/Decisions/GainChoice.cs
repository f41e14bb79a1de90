using SensorProfile.Profiles;

namespace SensorProfile.Decisions;

/// <summary>Which gain setting: the one with the largest full well whose read noise the sky still drowns.</summary>
/// <remarks>The lower gain setting is preferred if and only if R² ≤ ((1+p)² − 1)·B·t, B the sky background.</remarks>
public static class GainChoice
{
    /// <summary>Whether the sky drowns this read noise.</summary>
    /// <param name="readVariance">R², e-².</param>
    /// <param name="background">B, e-/px/s.</param>
    /// <param name="exposureSeconds">t.</param>
    /// <param name="loss">p.</param>
    internal static bool IsDrowned(double readVariance, double background, double exposureSeconds, double loss) =>
        readVariance <= ((1 + loss) * (1 + loss) - 1) * background * exposureSeconds;

    /// <summary>Ranks the measured modes for one sky and exposure.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="sky">The sky.</param>
    /// <param name="exposureSeconds">Exposure of one light, s.</param>
    /// <param name="loss">Accepted rise of the noise.</param>
    /// <exception cref="DecisionRefusedException">The question is wrong, or no mode has read noise and gain.</exception>
    public static GainChoiceAnswer Find(CameraProfile profile, SkyRate sky, double exposureSeconds, double loss = 0.05)
    {
        Guard.Sky(sky.Rate);
        Refuse.UnlessPositive(exposureSeconds, "exposure-not-positive", "exposure", "s");
        Refuse.UnlessShare(loss, "loss-out-of-range", "accepted loss");
        GainRow[] rows = [.. profile.Modes.Where(m => m.ReadNoise is { Value: > 0 } && m.Gain is { Value: > 0 })
            .Select(m => Row(profile.Camera, m, sky, exposureSeconds, loss)).OrderByDescending(r => r.FullWell?.Value ?? r.Gain.Value).ThenByDescending(r => r.Gain.Value)];
        if (rows.Length == 0)
            throw Refuse.CannotTell("gain-missing", "No mode of the profile has both read noise and gain: add bias frames and flat pairs and characterise again.");
        GainRow? chosen = rows.FirstOrDefault(r => r.Drowned);
        GainRow advised = chosen ?? rows.MinBy(r => r.ReadNoise.Value)!;
        GainRow largest = rows[0];
        return new GainChoiceAnswer
        {
            Sentence = chosen is not null ? $"Use {ModeChoice.Name(chosen.Settings)}: it holds the most light, and its read noise adds no more than {Said.Percent(loss)}."
                : $"Use {ModeChoice.Name(advised.Settings)}, the lowest read noise; no setting is drowned by the sky before {Said.Seconds(rows.Min(r => r.ExposureNeeded.Value))}.",
            Reason = advised == largest ? $"Its read noise is drowned from {Said.Seconds(largest.ExposureNeeded.Value)} on."
                : $"{ModeChoice.Name(largest.Settings)} holds more light, but needs exposures of {Said.Seconds(largest.ExposureNeeded.Value)} or more under this sky.",
            Verdict = "answered",
            Quantities = new Dictionary<string, Measurement?> { ["exposureNeeded"] = largest.ExposureNeeded },
            Findings = rows.Length == 1 ? [new Finding("one-mode-only", Severity.Note, "The profile holds one mode only, so there was nothing to compare: characterise a second gain setting.")] : [],
            RulesOfThumb = [$"\"Prefer a low gain or ISO setting\" (common practice, no source): {(advised == largest ? "right" : "wrong")} for this sky and exposure."],
            Modes = rows,
            Advised = advised.Settings,
        };
    }

    private static GainRow Row(CameraInfo camera, ModeProfile mode, SkyRate sky, double exposureSeconds, double loss)
    {
        double step = Math.Max(camera.CodeStep, 1) * mode.Gain!.Value;
        double variance = mode.ReadNoise!.Value * mode.ReadNoise.Value + step * step / 12, needed = SubExposure.Shortest(variance, sky.Rate.Value, loss);
        double relative = Math.Sqrt(Math.Pow(2 * mode.ReadNoise.StandardUncertainty / mode.ReadNoise.Value, 2) + Math.Pow(sky.Rate.StandardUncertainty / sky.Rate.Value, 2));
        return new GainRow(mode.Settings, mode.ReadNoise, mode.Gain, mode.FullWell,
            new Measurement(needed, needed * relative, "s", 1, "exposure from which the sky drowns the read noise"), IsDrowned(variance, sky.Rate.Value, exposureSeconds, loss));
    }
}
