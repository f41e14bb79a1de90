using SensorProfile.Frames;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>What the user should know about the darks.</summary>
internal static class DarkFindings
{
    private const int AdvisedExposures = 3;

    public static void Report(DarkTemperature[] temperatures, ModeFrames mode, Rejections rejections)
    {
        bool clamped = DarkRecipe.UseVariance(temperatures);
        if (clamped)
            rejections.Add(Codes.BlackClamp, Severity.Warning, "The dark level does not grow with exposure as the noise says it must: the camera pins its black level and takes the dark signal away; dark current is taken from the growth of the noise instead.");
        foreach (var few in temperatures.Where(t => t.Exposures.Count < AdvisedExposures).GroupBy(t => t.Exposures.Count).OrderBy(g => g.Key))
            rejections.Add(Codes.FewExposures, Severity.Warning, Invariant($"At {At(few)} there are darks of {Counted.Nouns(few.Key, "exposure")} only; with {AdvisedExposures} or more it can be tested whether dark signal grows in proportion."));
        if (clamped) return;
        foreach (DarkTemperature t in temperatures.Where(t => t.Typical is { Resolved: false }))
            rejections.Add(Codes.DarkNotResolved, Severity.Note, Invariant($"At {At([t])} the dark current is below my limit of {t.Typical!.UpperLimit:0.####} e⁻/px/s (95 %): the black level moves more from frame to frame than the dark signal; longer exposures would show it."));
        NotLinear([.. temperatures.Where(t => t.Typical is { Linear: false })], rejections);
        foreach (DarkTemperature t in temperatures) Compare(t, At([t]), rejections);
    }

    /// <summary>One sentence for all temperatures: the cause is mostly the same at each.</summary>
    private static void NotLinear(DarkTemperature[] bent, Rejections rejections)
    {
        if (bent.Length == 0) return;
        DarkTemperature worst = bent.MaxBy(t => t.Typical!.CurvatureShare)!;
        string where = bent.Length == 1 ? "" : Invariant($", at {At([worst])}");
        rejections.Add(Codes.DarkNotLinear, Severity.Warning, Invariant(
            $"At {At(bent)} the dark level does not grow in proportion to exposure (largest departure {100 * worst.Typical!.CurvatureShare:0.#} % of the rise{where}): a drifting temperature, a drifting black level, light, or a glow that is not in proportion; use darks of the lights' own exposure, and take these again in mixed order, in the dark, to tell."));
    }

    private static string At(IEnumerable<DarkTemperature> temperatures) =>
        Counted.List([.. temperatures.Select(t => Invariant($"{t.TemperatureCelsius:0.0}").Replace('-', '−'))]) + " °C";

    private static void Compare(DarkTemperature t, string at, Rejections rejections)
    {
        if (t.Typical is not { Resolved: true } level || t.Variance is not { Resolved: true } variance) return;
        double difference = variance.Slope.Value - level.Slope.Value;
        double uncertainty = Math.Sqrt(Math.Pow(level.Slope.StandardUncertainty, 2) + Math.Pow(variance.Slope.StandardUncertainty, 2));
        if (Math.Abs(difference) <= 4 * uncertainty || Math.Abs(difference) <= 0.25 * level.Slope.Value) return;
        string cause = difference > 0
            ? "many warm or flickering pixels, or a black level that follows the dark signal"
            : "light that reaches the sensor evenly would not do this; a black level that drifts up with exposure or a smoothing camera would";
        rejections.Add(Codes.FormsDisagree, Severity.Warning, Invariant(
            $"At {at} the level says {level.Slope.Value:0.####} and the noise {variance.Slope.Value:0.####} e⁻/px/s: {cause}."));
    }
}
