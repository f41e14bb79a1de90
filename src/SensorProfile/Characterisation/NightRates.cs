using SensorProfile.DarkCurrent.Results;
using SensorProfile.Fitting.Models;
using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.Profiles.Darks;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>Darks without a thermometer: the dark current of each night, and the nights in order of warmth.</summary>
internal static class NightRates
{
    /// <summary>
    /// The sets of each night, or of each group of a night that was split by warmth, in order of time; those without a
    /// time come last.
    /// </summary>
    public static IReadOnlyList<FrameSet[]> Split(IEnumerable<FrameSet> sets)
    {
        ILookup<bool, FrameSet> bySplit = sets.ToLookup(s => s.Warmth is not null);
        IEnumerable<FrameSet[]> groups = bySplit[true].GroupBy(s => s.Warmth!.Number).Select(g => g.ToArray());
        return
        [
            .. groups
                .Concat(ByTime(bySplit[false]))
                .OrderBy(
                    g => g.SelectMany(s => s.Frames).Order(FrameOrder.ByTimeThenName).First(),
                    FrameOrder.ByTimeThenName
                ),
        ];
    }

    private static IReadOnlyList<FrameSet[]> ByTime(IEnumerable<FrameSet> sets)
    {
        List<List<FrameSet>> nights = [];
        DateTimeOffset? last = null;
        foreach (FrameSet set in sets.OrderBy(s => s.Frames[0], FrameOrder.ByTimeThenName))
        {
            bool isUntimed =
                set.Frames[0].StartUtc is null && nights.Count > 1 && nights[^1][0].Frames[0].StartUtc is not null;
            if (nights.Count == 0 || set.Frames[0].StartUtc - last > NightSplit.Pause || isUntimed)
                nights.Add([]);
            nights[^1].Add(set);
            last = set.Frames.Max(f => f.StartUtc) is { } end && !(end < last) ? end : last;
        }
        return [.. nights.Select(n => n.ToArray())];
    }

    /// <summary>One night as the profile keeps it.</summary>
    public static DarkNight Of(DarkTemperature night, DarkCurrentPoint point) =>
        new()
        {
            StartUtc = night.Sets.SelectMany(s => s.Frames).Min(f => f.Frame.StartUtc),
            AboveColdest = night.Sets.Select(s => s.Set.Warmth?.AboveColdest).FirstOrDefault(),
            TypicalRate = point.TypicalRate,
            MeanRate = point.MeanRate,
            RateFromVariance = point.RateFromVariance,
            Exposures = point.Exposures,
            Frames = point.Frames,
        };

    /// <summary>Says what darks without a temperature can be used for, and which night was warmer.</summary>
    public static void Report(IReadOnlyList<DarkNight> nights, IReadOnlyList<string> frames, FindingsLog log)
    {
        if (frames.Count == 0)
            return;
        log.Add(
            FindingCodes.DarkTemperatureUnknown,
            Severity.Warning,
            $"{Counted.Nouns(frames.Count, "dark frame")} have no usable sensor temperature: their dark current is given "
                + $"for {(nights.Count == 1 ? "their night" : $"each {One(nights)}")}, without a law of temperature; fill "
                + "temperature_c in the capture table if you know it.",
            frames
        );
        DarkNight[] seen = [.. nights.Where(n => Rate(n) is { Value: > 0 }).OrderBy(n => Rate(n)!.Value)];
        if (seen.Length < 2 || log.Has(FindingCodes.NightsOrdered))
            return;
        double coldest = Rate(seen[0])!.Value;
        log.Add(
            FindingCodes.NightsOrdered,
            Severity.Note,
            $"By their dark current the {One(nights)}s were, from the coldest to the warmest: "
                + Counted.List([.. seen.Select((n, i) => Place(n, i, coldest))])
                + Invariant($" (if dark current doubles every {PhysicalConstants.UsualDoubling:0} °C).")
        );
    }

    private static string One(IReadOnlyList<DarkNight> nights) =>
        nights.Any(n => n.AboveColdest is not null) ? "group" : "night";

    private static string Place(DarkNight night, int index, double coldest) =>
        (night.StartUtc is { } start ? Invariant($"{start:yyyy-MM-dd HH:mm} UTC") : "a night without a date")
        + (
            index == 0
                ? ""
                : Invariant(
                    $", about {PhysicalConstants.UsualDoubling * Math.Log2(Rate(night)!.Value / coldest):0.#} °C warmer"
                )
        );

    private static Measurement? Rate(DarkNight night) => night.TypicalRate ?? night.RateFromVariance;
}
