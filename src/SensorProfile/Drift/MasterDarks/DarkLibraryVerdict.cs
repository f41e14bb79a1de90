using SensorProfile.NoiseModel.Noise;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Combines the verdicts on single masters into an answer.</summary>
internal static class DarkLibraryVerdict
{
    private const int MinFresh = 8;

    public static DarkLibraryAnswer Judge(
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
            Library = verdict,
            Stack = ruler.Options,
            GainFrom =
                ruler.Gain is null ? GainSource.Unknown
                : ruler.GainIsRough ? GainSource.HotPixels
                : GainSource.Profile,
            Gain = ruler.Gain,
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
                            ruler,
                            fresh,
                            g.Any(m => m.Verdict == CheckVerdict.Retake)
                        ) with
                        {
                            Settings = g.Key.Settings,
                        }
                    ),
            ],
            Quantities = new Dictionary<string, Measurement?> { [QuantityNames.LossWorst] = worst },
            Findings = findings,
        };
    }

    /// <summary>
    /// Number of frames by the dark-count rule of the decisions, for the same stack.
    /// </summary>
    private static DarksToShoot Shoot(
        double? exposure,
        double? temperature,
        StackRuler ruler,
        IReadOnlyList<FreshDarks> fresh,
        bool retake
    )
    {
        if (!retake)
            return new DarksToShoot(exposure, temperature, MinFresh, Retake: false);
        FreshDarks? like = fresh.FirstOrDefault(f =>
            exposure is null
            || f.Set.ExposureSeconds is not double s
            || Math.Abs(s - exposure.Value) <= 0.02 * exposure.Value
        );
        double ratio = like is null ? 1 : like.TemporalVariance / ruler.LightVariance(like.TemporalVariance, exposure);
        int n = (int)MinDarks.InMaster(ratio, ruler.Options.LightsPerPosition, ruler.Options.Limits.NoiseLoss);
        return new DarksToShoot(exposure, temperature, n, Retake: true);
    }
}
