using SensorProfile.Screening;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>What a temperature probe's steps let one say of sets taken at about one temperature.</summary>
internal static class ProbeReadings
{
    /// <summary>
    /// A probe that reads in coarser steps than this says nothing about small differences between sets, °C.
    /// </summary>
    private const double FineProbe = 0.3;

    /// <summary>
    /// A set taken a little warmer than the mean collected as much as a slightly longer exposure at the mean would
    /// have, s.
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
    /// Whether the probe's steps are fine enough to bring frames of slightly different temperatures together.
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

    // The mean of n readings in steps of s carries s/√12 at least, however many there are; a coarse probe's scatter
    // comes on top. While the temperature drifts, die and
    // probe differ by their lag, for which a tenth of the drift stands.
    public static double TemperatureUncertainty(ScreenedSet[] sets, double step)
    {
        double[] readings =
        [
            .. sets.SelectMany(s => s.Frames).Select(f => f.Frame.TemperatureCelsius).OfType<double>(),
        ];
        double[] means = [.. sets.Select(s => s.Set.TemperatureCelsius).OfType<double>()];
        if (step <= FineProbe)
            return readings.Length < 2 ? 0 : (readings.Max() - readings.Min()) / 10;
        double mean = means.Average();
        double scatter =
            means.Length < 2
                ? 0
                : Math.Sqrt(means.Sum(m => (m - mean) * (m - mean)) / (means.Length - 1) / means.Length);
        return Math.Sqrt(scatter * scatter + step * step / 12);
    }
}
