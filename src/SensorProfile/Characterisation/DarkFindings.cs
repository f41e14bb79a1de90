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
        foreach (DarkTemperature t in temperatures)
        {
            string at = Invariant($"{t.TemperatureCelsius:0.0} °C").Replace('-', '−');
            if (t.Exposures.Count < AdvisedExposures)
                rejections.Add(Codes.FewExposures, Severity.Warning, Invariant($"At {at} there are darks of {t.Exposures.Count} exposure{(t.Exposures.Count == 1 ? "" : "s")} only; with {AdvisedExposures} or more it can be tested whether dark signal grows in proportion."));
            if (clamped) continue;
            if (t.Typical is { Resolved: false } line)
                rejections.Add(Codes.DarkNotResolved, Severity.Note, Invariant($"At {at} the dark current is below my limit of {line.UpperLimit:0.####} e⁻/px/s (95 %): the black level moves more from frame to frame than the dark signal; longer exposures would show it."));
            if (t.Typical is { Linear: false })
                rejections.Add(Codes.DarkNotLinear, Severity.Warning, Invariant($"At {at} the dark level does not grow in proportion to exposure (largest departure {100 * t.Typical.CurvatureShare:0.#} % of the rise): a drifting temperature, a drifting black level, or light."));
            Compare(t, at, rejections);
        }
    }

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
