using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Drift.HotPixelMatching;
using SensorProfile.Fitting.Models;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Response;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Reads from a mode of a profile the quantities that are compared over the years.</summary>
internal static class ComparedQuantities
{
    /// <summary>
    /// Names of the quantities in electrons, which change when the gain is measured wrongly.
    /// </summary>
    public static readonly IReadOnlySet<string> InElectrons = new HashSet<string>
    {
        QuantityNames.ReadNoise,
        QuantityNames.FullWell,
        QuantityNames.DarkRate,
        QuantityNames.DarkRateByPixel,
    };

    /// <summary>Reads the quantities that the mode has.</summary>
    /// <param name="mode">The mode.</param>
    /// <param name="codeStep">ADU between usable codes.</param>
    /// <param name="commonTemperature">Temperature for the dark current, °C; null when there is none.</param>
    /// <param name="patternTemperature">Temperature at which hot pixels and glow of all profiles hold, °C; null when
    /// they differ.</param>
    /// <param name="options">Thresholds.</param>
    public static IReadOnlyList<Quantity> Read(
        ModeProfile mode,
        int codeStep,
        double? commonTemperature,
        double? patternTemperature,
        DriftOptions options
    )
    {
        List<Quantity> all = [];
        void Add(string name, Measurement? value, double nightly = 0)
        {
            if (value is not null && double.IsFinite(value.Value) && double.IsFinite(value.StandardUncertainty))
                all.Add(
                    new Quantity(
                        name,
                        value with
                        {
                            StandardUncertainty = double.Hypot(value.StandardUncertainty, nightly),
                        }
                    )
                );
        }
        double code = codeStep / Math.Sqrt(12);
        // the level drifts from frame to frame without any ageing
        Add(QuantityNames.BiasLevel, mode.BiasLevel, double.Hypot(mode.FixedPattern?.BiasStability?.Value ?? 0, code));
        Add(QuantityNames.ReadNoise, mode.ReadNoise ?? mode.ReadNoiseAdu);
        Add(QuantityNames.Gain, mode.Gain);
        Add(QuantityNames.FullWell, mode.FullWell);
        Add(QuantityNames.SaturationLevel, mode.SaturationLevel, code);
        Add(QuantityNames.LinearityError, mode.LinearityError);
        Add(QuantityNames.ResponseNonuniformity, mode.ResponseNonuniformity);
        Add(QuantityNames.RowNoise, mode.FixedPattern?.RowNoise);
        Add(QuantityNames.ColumnNoise, mode.FixedPattern?.ColumnNoise);
        foreach (ChannelProfile channel in mode.Channels)
        {
            string colour = "Of" + channel.Name; // gainOfR, readNoiseOfG1 …
            Add(QuantityNames.ReadNoise + colour, channel.ReadNoise ?? channel.ReadNoiseAdu);
            Add(QuantityNames.Gain + colour, channel.Gain);
            Add(QuantityNames.FullWell + colour, channel.FullWell);
            Add(QuantityNames.SaturationLevel + colour, channel.SaturationLevel, code);
            Add(QuantityNames.ResponseNonuniformity + colour, channel.ResponseNonuniformity);
        }
        if (commonTemperature is double celsius)
            all.AddRange(Dark(mode, celsius, options));
        if (patternTemperature is not null && mode.FixedPattern is { } pattern)
            all.AddRange(Pattern(mode, pattern, options));
        return all;
    }

    private static IEnumerable<Quantity> Dark(ModeProfile mode, double celsius, DriftOptions options)
    {
        if (DarkCurrentPredictor.FromProfile(mode.DarkCurrent!)?.At(celsius) is not { } dark || !(dark.Rate.Value > 0))
            yield break;
        double doubling = dark.DoublingTemperature.Value;
        bool known = double.IsFinite(doubling) && doubling > 0;
        double nightly = known ? dark.Rate.Value * Math.Log(2) / doubling * options.TemperatureRepeatability : 0;
        yield return new Quantity(
            QuantityNames.DarkRate,
            dark.Rate with
            {
                StandardUncertainty = double.Hypot(dark.Rate.StandardUncertainty, nightly),
            }
        );
        if (known && double.IsFinite(dark.DoublingTemperature.StandardUncertainty))
            yield return new Quantity(QuantityNames.DoublingTemperature, dark.DoublingTemperature);
    }

    private static IEnumerable<Quantity> Pattern(ModeProfile mode, FixedPatternProfile pattern, DriftOptions options)
    {
        foreach (double rate in options.HotRates)
            if (CountAbove(pattern.HotPixelCurve, rate) is long count)
                yield return Count(mode, pattern.HotPixelCurve, rate, count, options);
        Measurement[] totals = [.. pattern.Glow.Select(g => g.Total).OfType<Measurement>()];
        if (totals.Length > 0)
            yield return new Quantity(
                QuantityNames.GlowTotal,
                totals[0] with
                {
                    Value = totals.Sum(t => t.Value),
                    StandardUncertainty = Math.Sqrt(totals.Sum(t => t.StandardUncertainty * t.StandardUncertainty)),
                }
            )
            {
                Doubling = pattern.Glow.FirstOrDefault(g => g.Total is not null)?.DoublingTemperature?.Value
                    is > 1
                        and < 40
                        and var doubling
                    ? doubling
                    : null,
            };
    }

    /// <summary>
    /// The count, with the effects that the session's temperature and gain may have on it: N above r at a sensor δ
    /// warmer is N above r·2^(−δ/ΔT₂), so d ln N/dT = κ·ln 2/ΔT₂ with κ = −d ln N/d ln r; an error of the gain moves r
    /// as well.
    /// </summary>
    private static Quantity Count(
        ModeProfile mode,
        IReadOnlyList<HotPixelCount> curve,
        double rate,
        long count,
        DriftOptions options
    )
    {
        double doubling = HotPixelStep.OfClass(mode, rate)
            ?? mode.DarkCurrent?.DoublingTemperature?.Value
            ?? PhysicalConstants.UsualDoubling;
        double steepness = Steepness(curve, rate),
            perCelsius = steepness * Math.Log(2) / doubling,
            gain = mode.Gain is { Value: > 0 } k ? k.StandardUncertainty / k.Value : 0;
        return Quantity.Count(
            QuantityNames.HotPixelsAboveRate(rate),
            count,
            1,
            double.Hypot(perCelsius * options.TemperatureRepeatability, steepness * gain),
            perCelsius
        );
    }

    /// <summary>
    /// κ = −d ln N/d ln r from the counts on both sides of a rate, or on one side at an end of the curve.
    /// </summary>
    internal static double Steepness(IReadOnlyList<HotPixelCount> curve, double rate)
    {
        HotPixelCount[] ascending = [.. curve.Where(c => c.Threshold > 0).OrderBy(c => c.Threshold)];
        int at = Array.FindIndex(ascending, c => c.Threshold > rate * (1 - 1e-9));
        if (ascending.Length < 2 || at < 0)
            return 0;
        bool exact = ascending[at].Threshold < rate * (1 + 1e-9);
        HotPixelCount low = ascending[Math.Max(0, at - 1)],
            high = ascending[Math.Min(ascending.Length - 1, exact ? at + 1 : at)];
        return high.Threshold > low.Threshold
            ? Math.Log((low.Count + 0.5) / (high.Count + 0.5)) / Math.Log(high.Threshold / low.Threshold)
            : 0;
    }

    /// <summary>
    /// Number of pixels above a rate, interpolated in log-log between the curve's thresholds; null outside them.
    /// </summary>
    internal static long? CountAbove(IReadOnlyList<HotPixelCount> curve, double rate)
    {
        HotPixelCount[] ascending = [.. curve.Where(c => c.Threshold > 0).OrderBy(c => c.Threshold)];
        if (ascending.FirstOrDefault(c => Math.Abs(c.Threshold / rate - 1) < 1e-9) is { } exact)
            return exact.Count;
        int above = Array.FindIndex(ascending, c => c.Threshold > rate);
        if (above <= 0)
            return null;
        (HotPixelCount low, HotPixelCount high) = (ascending[above - 1], ascending[above]);
        double share = Math.Log(rate / low.Threshold) / Math.Log(high.Threshold / low.Threshold);
        return (long)
            Math.Round(Math.Exp(Math.Log(low.Count + 0.5) * (1 - share) + Math.Log(high.Count + 0.5) * share) - 0.5);
    }
}
