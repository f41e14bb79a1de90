using SensorProfile.Frames;
using SensorProfile.Screening;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>
/// What the resolution of a temperature probe allows one to say about sets taken at nearly one temperature.
/// </summary>
internal static class ProbeReadings
{
    /// <summary>A probe with coarser steps than this, °C, says nothing about small differences between sets.</summary>
    private const double FineProbe = 0.3;

    /// <summary>Step of a probe that never changed its reading, °C: one decimal is common (no source).</summary>
    private const double UsualStep = 0.1;

    /// <summary>The finest step that the digits of a reading are taken to show, °C.</summary>
    private const double FinestStep = 0.001;

    /// <summary>
    /// Equivalent exposure, s: a set slightly warmer than the mean collects as much as a slightly longer exposure at
    /// the mean.
    /// </summary>
    public static double EquivalentExposure(
        ScreenedSet set,
        IReadOnlyList<ScreenedSet> sets,
        double temperature,
        double doubling
    ) =>
        !ReadsFinely(sets) || set.Set.TemperatureCelsius is not { } own
            ? set.Set.ExposureSeconds!.Value
            : set.Set.ExposureSeconds!.Value * Math.Pow(2, (own - temperature) / doubling);

    /// <summary>
    /// Whether the steps of the probe are fine enough to combine frames of slightly different temperatures.
    /// </summary>
    public static bool ReadsFinely(IReadOnlyList<ScreenedSet> sets) => Step(sets) <= FineProbe;

    public static double Step(IReadOnlyList<ScreenedSet> sets)
    {
        double[] readings =
        [
            .. sets.SelectMany(s => s.Frames)
                .Select(f => f.Frame.TemperatureCelsius)
                .OfType<double>()
                .Distinct()
                .Order(),
        ];
        return readings.Length < 2
            ? 0
            : Enumerable.Range(1, readings.Length - 1).Min(i => readings[i] - readings[i - 1]);
    }

    // With a coarse probe of step s, the mean is uncertain by at least s/√12 however many readings there are; the
    // scatter comes on top. With a fine probe, die and probe differ by their lag while the temperature drifts: a tenth
    // of the drift is taken; and one reading, however often repeated, is known to s/√12. A thermometer that somebody
    // read is taken at its word no further than a reading goes; what the readings of a whole night have in common is not
    // of one point (TypedScale).
    public static double TemperatureUncertainty(ScreenedSet[] sets, double step)
    {
        double typed = TypedUncertainty(sets);
        double probe = ProbeUncertainty(sets, step);
        return Math.Sqrt((typed * typed) + (probe * probe));
    }

    /// <summary>Errors of a temperature that nights of typed readings share, offset and scale of each, °C.</summary>
    public static IEnumerable<double> SharedErrors(
        IReadOnlyList<ScreenedSet> sets,
        double temperature,
        IEnumerable<TypedScale> nights
    ) =>
        nights.SelectMany(night =>
        {
            double share =
                (double)sets.Where(s => s.Set.TypedScale == night).Sum(s => s.Frames.Count)
                / sets.Sum(s => s.Frames.Count);
            return new[]
            {
                share * night.OffsetUncertainty,
                share * night.ScaleUncertainty * (temperature - night.MeanCelsius),
            };
        });

    private static double TypedUncertainty(ScreenedSet[] sets)
    {
        double[] readings =
        [
            .. sets.Where(s => s.Set.TypedScale is null)
                .SelectMany(s => s.Frames)
                .Where(f => f.Frame.TemperatureOrigin != TemperatureOrigin.Header)
                .Select(f => f.Frame.TemperatureCelsius)
                .OfType<double>(),
        ];
        // one number typed for many frames was read once
        return readings.Length == 0 ? 0 : TypedScale.ReadingDoubt / Math.Sqrt(readings.Distinct().Count());
    }

    private static double ProbeUncertainty(ScreenedSet[] sets, double step)
    {
        double[] readings =
        [
            .. sets.SelectMany(s => s.Frames).Select(f => f.Frame.TemperatureCelsius).OfType<double>(),
        ];
        double[] means = [.. sets.Select(s => s.Set.TemperatureCelsius).OfType<double>()];
        if (step <= FineProbe)
            return readings.Length == 0 ? 0 : FineUncertainty(readings);
        double mean = means.Average();
        double scatter =
            means.Length < 2
                ? 0
                : Math.Sqrt(means.Sum(m => (m - mean) * (m - mean)) / (means.Length - 1) / means.Length);
        return Math.Sqrt(scatter * scatter + step * step / 12);
    }

    // Readings that pass through n steps s average their rounding: of an even rise through n steps, only the part of a
    // step at its ends is left, at most s/(√12·n).
    private static double FineUncertainty(double[] readings)
    {
        double[] distinct = [.. readings.Distinct().Order()];
        double lag = (distinct[^1] - distinct[0]) / 10;
        double step = distinct.Length > 1 ? distinct.Zip(distinct.Skip(1), (a, b) => b - a).Min() : StepOf(distinct[0]);
        return Math.Sqrt(lag * lag + step * step / 12 / (distinct.Length * distinct.Length));
    }

    // what a single value tells: its digits, and never a step coarser than the usual one (−10 may be −10.0)
    private static double StepOf(double reading)
    {
        double step = UsualStep;
        while (step > FinestStep && Math.Abs(reading / step - Math.Round(reading / step)) > 1e-3)
            step /= 10;
        return step;
    }
}
