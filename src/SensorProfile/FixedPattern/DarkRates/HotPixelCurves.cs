using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>The hot-pixel curve at the measured temperatures.</summary>
/// <remarks>The rate of a pixel at T is its rate at the reference times (I(T)/I(T_ref))^(ΔT₂/ΔT₂ᵢ), which is exact if
/// both laws are exponentials of the same function of temperature. ΔT₂ᵢ is the doubling temperature of the pixel
/// itself, or else of its rate class, or else of the typical pixel. Only pixels that stand out at the reference
/// temperature are counted, so each curve starts at the rates these reach.</remarks>
internal static class HotPixelCurves
{
    private const double MinSigmas = 5;

    /// <summary>One curve per temperature, coldest first; empty without a law.</summary>
    public static IReadOnlyList<HotPixelCurveAt> Measure(PatternInput input, RateMaps maps)
    {
        if ((input.ActivationLaw ?? input.TypicalLaw) is not { } law || maps.Doubling is null)
            return [];
        double reference = input.ReferenceTemperature,
            floor = Math.Max(maps.Typical + MinSigmas * maps.TypicalUncertainty, 1e-6);
        double typical = Math.Log(2) * 0.1 / Math.Log(law(reference + 0.05) / law(reference - 0.05));
        if (!(typical > 0) || !double.IsFinite(typical))
            return [];
        // Arrays of the right length: if a fifth of the pixels stand out, growing lists would take more memory than all
        // maps.
        int count = 0;
        foreach (float rate in maps.Rate)
            if (rate > floor)
                count++;
        float[] hot = new float[count],
            rates = new float[count];
        double[] powers = new double[count];
        for (int i = 0, k = 0; i < maps.Rate.Length; i++)
            if (maps.Rate[i] > floor)
                (hot[k], powers[k++]) = (maps.Rate[i], typical / Doubling(maps, i, typical));
        List<HotPixelCurveAt> curves = [];
        foreach (double celsius in input.Series.Select(s => s.TemperatureCelsius).Distinct().Order())
        {
            double factor = law(celsius) / law(reference);
            for (int k = 0; k < count; k++)
                rates[k] = (float)(hot[k] * Math.Pow(factor, powers[k]));
            curves.Add(new HotPixelCurveAt(celsius, HotPixelCurve.Count(rates, floor * factor, 0)));
        }
        return [.. curves.Where(c => c.Counts.Count > 1)];
    }

    private static double Doubling(RateMaps maps, int i, double typical) =>
        (float)maps.Doubling![i] is > 0 and < float.PositiveInfinity and var own
            ? own
            : maps.Classes.FirstOrDefault(c => maps.Rate[i] >= c.RateFrom && maps.Rate[i] < c.RateTo)?.Doubling.Value
                ?? typical;
}
