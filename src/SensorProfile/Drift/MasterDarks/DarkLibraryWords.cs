using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Turns the verdicts on single masters into an answer.</summary>
internal static class DarkLibraryWords
{
    private const int FewestFresh = 8;

    public static DarkLibraryAnswer Of(
        IReadOnlyList<MasterVerdict> masters,
        StackRuler ruler,
        IReadOnlyList<FreshDarks> fresh,
        List<Finding> findings
    )
    {
        MasterVerdict[] retake = [.. masters.Where(m => m.Verdict == CheckVerdict.Retake)],
            unknown = [.. masters.Where(m => m.Verdict == CheckVerdict.CannotTell)];
        CheckVerdict verdict =
            retake.Length > 0 ? CheckVerdict.Retake
            : unknown.Length > 0 ? CheckVerdict.CannotTell
            : CheckVerdict.Keep;
        Measurement? worst = masters.Select(m => m.Loss).OfType<Measurement>().MaxBy(m => m.Value);
        return new DarkLibraryAnswer
        {
            Sentence = Sentence(masters.Count, retake, unknown),
            Reason = (retake.FirstOrDefault() ?? unknown.FirstOrDefault() ?? masters.MaxBy(m => m.Loss?.Value ?? 0)!)
                is { } shown
                ? $"{Path.GetFileName(shown.File)}: {shown.Reason}"
                : "",
            Verdict = Said.Word(verdict),
            Library = verdict,
            Masters = masters,
            Shoot =
            [
                .. masters
                    .Where(m => m.Verdict != CheckVerdict.Keep)
                    .GroupBy(m => (m.Exposure, m.Temperature, m.Settings))
                    .Select(g =>
                        Shoot(
                            g.Key.Exposure,
                            g.Key.Temperature,
                            g.Key.Settings,
                            ruler,
                            fresh,
                            g.Any(m => m.Verdict == CheckVerdict.Retake)
                        )
                    ),
            ],
            Quantities = new Dictionary<string, Measurement?> { ["lossWorst"] = worst },
            Findings = findings,
            RulesOfThumb =
            [
                "\"Renew the dark library yearly\" (common practice, no source): the answer above comes from "
                    + "the frames, not from their age; age alone is a reason to check, never to throw darks away.",
            ],
        };
    }

    private static string Sentence(int all, MasterVerdict[] retake, MasterVerdict[] unknown)
    {
        string Names(MasterVerdict[] some) =>
            string.Join(", ", some.Take(4).Select(m => Path.GetFileName(m.File)))
            + (some.Length > 4 ? $" and {Said.Whole(some.Length - 4)} more" : "");
        string open = unknown.Length > 0 ? $" Cannot tell for {Names(unknown)}." : "";
        if (retake.Length > 0)
            return "Retake "
                + $"{(retake.Length == all && all > 1 ? "all " + Said.Whole(all) + " masters" : Names(retake))}.{open}";
        return unknown.Length == 0
                ? $"Keep {(all == 1 ? "this master" : $"all {Said.Whole(all)} masters")}: fresh darks show no residual "
                    + "that your stack would notice."
            : unknown.Length == all ? $"Cannot tell whether {Names(unknown)} {(all == 1 ? "is" : "are")} still good."
            : $"{open.TrimStart()} Keep the rest.";
    }

    /// <summary>", ISO 800"; nothing where the master does not say.</summary>
    private static string AtSettings(ModeSettings? settings) =>
        settings is { Iso: null, Gain: null } or null ? "" : $", {ModeChoice.Name(settings)}";

    /// <summary>
    /// Frames by the dark count of the decisions, for a stack described in the same way.
    /// </summary>
    private static DarksToShoot Shoot(
        double? exposure,
        double? temperature,
        ModeSettings? settings,
        StackRuler ruler,
        IReadOnlyList<FreshDarks> fresh,
        bool retake
    )
    {
        string at = FreshChoice.Conditions(exposure, temperature) + AtSettings(settings);
        if (!retake)
            return new DarksToShoot(
                exposure,
                temperature,
                FewestFresh,
                $"fresh darks at {at} to check the master with, twice as many if it was too close to tell"
            );
        FreshDarks? like = fresh.FirstOrDefault(f =>
            exposure is null
            || f.Set.ExposureSeconds is not double s
            || Math.Abs(s - exposure.Value) <= 0.02 * exposure.Value
        );
        double ratio = like is null ? 1 : like.TemporalVariance / ruler.LightVariance(like.TemporalVariance, exposure);
        int n = (int)FewestDarks.InMaster(ratio, ruler.Options.LightsPerPosition, ruler.Options.Limits.NoiseLoss);
        return new DarksToShoot(
            exposure,
            temperature,
            n,
            $"{Said.Whole(n)} darks at {at}: their own noise then adds no more than "
                + $"{Said.Percent(ruler.Options.Limits.NoiseLoss)} to {ruler.Words}"
        );
    }
}
