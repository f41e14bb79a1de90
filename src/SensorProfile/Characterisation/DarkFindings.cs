using SensorProfile.Characterisation.Summaries;
using SensorProfile.DarkCurrent.Results;
using SensorProfile.Frames;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>What the user should know about the darks.</summary>
internal static class DarkFindings
{
    private const int AdvisedExposures = 3;

    public static void Report(DarkTemperature[] temperatures, ModeFrames mode, FindingsLog log)
    {
        bool pinned = DarkSummary.UseVariance(temperatures);
        if (pinned)
            log.Add(
                FindingCodes.BlackLevelPinned,
                Severity.Warning,
                "The dark level does not grow with exposure as the noise says it must: the camera pins its black "
                    + "level, which removes the dark signal; dark current is taken from the growth of the noise "
                    + "instead."
            );
        foreach (
            var few in temperatures
                .Where(t => t.Exposures.Count < AdvisedExposures)
                .GroupBy(t => t.Exposures.Count)
                .OrderBy(g => g.Key)
        )
            log.Add(
                FindingCodes.FewDarkExposures,
                Severity.Warning,
                Invariant($"At {At(few)} there are darks of {Counted.Nouns(few.Key, "exposure")} only; with ")
                    + Invariant($"{AdvisedExposures} or more it can be tested whether dark signal grows in proportion.")
            );
        if (pinned)
            return;
        foreach (DarkTemperature t in temperatures.Where(t => t.Typical is { Resolved: false }))
            log.Add(
                FindingCodes.DarkBelowLimit,
                Severity.Note,
                Invariant(
                    $"At {At([t])} the dark current is below the detection limit of {t.Typical!.UpperLimit:0.####} e⁻/px/s "
                )
                    + "(95 %): the black level moves more from frame to frame than the dark signal; longer exposures "
                    + "would show it."
            );
        NotLinear([.. temperatures.Where(t => t.Typical is { Linear: false })], log);
        Compare(temperatures, log);
    }

    /// <summary>One sentence for all temperatures: the cause is mostly the same at each.</summary>
    private static void NotLinear(DarkTemperature[] bent, FindingsLog log)
    {
        if (bent.Length == 0)
            return;
        DarkTemperature worst = bent.MaxBy(t => t.Typical!.CurvatureShare)!;
        string where = bent.Length == 1 ? "" : Invariant($", at {At([worst])}");
        log.Add(
            FindingCodes.DarkNotLinear,
            Severity.Warning,
            Invariant($"At {At(bent)} the dark level does not grow in proportion to exposure (largest departure ")
                + Invariant(
                    $"{100 * worst.Typical!.CurvatureShare:0.#} % of the rise{where}): a drifting temperature, a "
                )
                + "drifting black level, light, or a glow that is not in proportion; use darks of the lights' own "
                + "exposure, and take these again in mixed order, in the dark, to tell."
        );
    }

    private static string At(IEnumerable<DarkTemperature> temperatures) =>
        Counted.List([.. temperatures.Select(t => QuantityText.Tenths(t.TemperatureCelsius))]) + " °C";

    private static void Compare(DarkTemperature[] temperatures, FindingsLog log)
    {
        foreach (
            IGrouping<bool, DarkTemperature> side in temperatures
                .Where(Disagree)
                .GroupBy(t => t.Variance!.Slope.Value > t.Typical!.Slope.Value)
        )
        {
            DarkTemperature worst = side.MaxBy(t =>
                Math.Abs(Math.Log(t.Variance!.Slope.Value / t.Typical!.Slope.Value))
            )!;
            string cause = side.Key
                ? "many pixels have more than the typical dark current (glow, warm or flickering pixels), or "
                    + "the black level follows the dark signal; where the glow and hot pixels of this report are "
                    + "few, it is the black level"
                : "light that reaches the sensor evenly would not do this; a black level that drifts up with "
                    + "exposure or a smoothing camera would";
            string where = side.Count() == 1 ? "" : Invariant($" (at {At([worst])})");
            log.Add(
                FindingCodes.DarkFormsDisagree,
                Severity.Warning,
                Invariant($"At {At(side)} the level says {worst.Typical!.Slope.Value:0.####} and the noise ")
                    + Invariant($"{worst.Variance!.Slope.Value:0.####} e⁻/px/s{where}: {cause}.")
            );
        }
    }

    private static bool Disagree(DarkTemperature t)
    {
        if (t.Typical is not { Resolved: true } level || t.Variance is not { Resolved: true } variance)
            return false;
        double difference = variance.Slope.Value - level.Slope.Value;
        double uncertainty = Math.Sqrt(
            Math.Pow(level.Slope.StandardUncertainty, 2) + Math.Pow(variance.Slope.StandardUncertainty, 2)
        );
        return Math.Abs(difference) > 4 * uncertainty && Math.Abs(difference) > 0.25 * level.Slope.Value;
    }
}
