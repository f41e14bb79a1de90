using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Glow;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.FixedPattern.Thermometer;
using SensorProfile.Pixels.Strips;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern;

/// <summary>Measures rates, laws, defects and glow of the pixels from the darks of a mode.</summary>
internal static class PatternMeasurement
{
    private const double OutstandingNoise = 5;

    /// <summary>
    /// Measures the pixels; null when no temperature has two exposures (bias counts as zero exposure).
    /// </summary>
    /// <param name="input">The mode.</param>
    /// <param name="response">Cold and dead pixels by their response to light; null without flats.</param>
    /// <param name="levels">Levels already sampled (<see cref="RateWalk.Levels"/>); null to sample them here.</param>
    public static PatternResult? Measure(
        PatternInput input,
        DefectClass[]? response,
        IReadOnlyDictionary<DarkSeries, SeriesLevels>? levels = null
    )
    {
        DefectThresholds thresholds = new();
        double Limit(ReferenceScale scale) =>
            Outstanding(thresholds = ThresholdChoice.For(input.Thresholds, scale), scale);
        if (RateWalk.Run(input, Limit, levels) is not { } maps)
            return null;
        MapMemory.Release(input.Pixels);
        DefectMap defects = DefectMap.Classify(input, maps, thresholds, response);
        GlowFinding? glow = GlowSearch.Find(input, maps, defects);
        MapMemory.Release(input.Pixels);
        (
            IReadOnlyList<HotPixelTemperature> temperatures,
            IReadOnlyList<Finding> findings,
            IReadOnlyDictionary<string, double> byFrame
        ) = HotPixelThermometer.Calibrate(input, maps, defects) is { } thermometer
            ? ThermometerReport.Measure(input, thermometer)
            : ([], [], new Dictionary<string, double>());
        MapMemory.Release(input.Pixels);
        double common = input.TypicalAtReference is { Value: > 0 } typical
            ? typical.StandardUncertainty / typical.Value
            : 0;
        double hotAbove = maps.Typical + thresholds.HotRate;
        GlowSplit? split = glow is null ? null : GlowSplit.Split(maps, glow, hotAbove);
        var result = new PatternResult
        {
            Maps = maps,
            Defects = defects,
            Glow = glow?.Field,
            Findings = findings,
            FrameTemperatures = byFrame,
            Profile = new FixedPatternProfile
            {
                HotPixelCurve = HotPixelCurve.Count(maps.Rate, maps.Typical, maps.TypicalUncertainty),
                RateQuantiles = RateQuantiles.Measure(maps.Rate, maps.Uncertainty, maps.TypicalUncertainty, common),
                HotPixelCurves = HotPixelCurves.Measure(input, maps),
                DoublingByRate = split?.Laws ?? maps.Classes,
                ThermalQuantiles = split is null
                    ? []
                    : RateQuantiles.Measure(
                        split.Thermal,
                        maps.Uncertainty,
                        maps.TypicalUncertainty,
                        // a third of what was set right may remain
                        double.Hypot(common, (1 - 1 / glow!.FloorFactor) / 3),
                        // and the tails of the glow, which lie in the thermal part
                        GlowPlace.TailDoubt
                            * glow.Regions.Sum(r => r.Total?.Value ?? 0)
                            / maps.Rate.Length
                    ),
                ThermalCurve = split is null
                    ? []
                    : HotPixelCurve.Count(split.Thermal, maps.Typical, maps.TypicalUncertainty),
                HotLawBend = maps.Bend == LawBend.None ? null : new(maps.Bend.Second, maps.Bend.Third),
                GlowClasses = split?.Classes ?? [],
                Flicker = FlickerClasses.Group(
                    maps.Levelled.Fits.OrderBy(f => f.Key).Select(f => f.Value),
                    maps.Excess.Pixels.Where(p => !maps.Levelled.Fits.ContainsKey(p.Key))
                        .OrderBy(p => p.Key)
                        .Select(p => p.Value)
                ),
                FlickerReach = input.TestLevels
                    ? FlickerReaches.Find(
                        maps.OrdinarySets,
                        Math.Sqrt(input.UnlitVariance) * input.Gains[0],
                        maps.Excess.Limit
                    )
                    : [],
                Places = DefectPlacing.Place(defects, input.Width, input.Height),
                Defects = defects.Counts,
                Lines = defects.Lines,
                Thresholds = thresholds,
                Thermometer = temperatures,
                Glow = glow?.Regions ?? [],
                ReferenceTemperature = input.ReferenceTemperature,
            },
        };
        MapMemory.Release(input.Pixels);
        return result;
    }

    /// <summary>Excess over the typical rate above which a pixel stands out, e-/px/s.</summary>
    internal static double Outstanding(DefectThresholds thresholds, ReferenceScale scale) =>
        Math.Max(thresholds.WarmRate, OutstandingNoise * scale.Noise);
}
