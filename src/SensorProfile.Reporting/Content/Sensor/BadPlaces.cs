using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Says in plain sentences where a sensor is bad.</summary>
internal static class BadPlaces
{
    private const double Crowded = 1.5,
        Sigmas = 4; // times an even share, and standard deviations of counting

    /// <summary>One sentence for each kind of blemish, the worst kind first; kinds that are absent are mentioned too.</summary>
    /// <param name="pattern">The fixed pattern.</param>
    /// <param name="pixels">Pixels of the sensor; 0 when unknown.</param>
    public static IReadOnlyList<string> Sentences(FixedPatternProfile pattern, long pixels) =>
        [
            .. new[]
            {
                Glow(pattern),
                Hot(pattern, pixels),
                Clusters(pattern),
                Lines(pattern),
                Others(pattern),
            }.OfType<string>(),
        ];

    /// <summary>
    /// The parts of the sensor in which hot pixels crowd: more than 1.5 times an even share, beyond chance.
    /// </summary>
    public static IReadOnlyList<(DefectArea Area, double Even)> CrowdedAreas(DefectPlaces places)
    {
        double hot = places.Areas.Sum(a => a.Hot),
            all = places.Areas.Sum(a => a.Pixels);
        return all <= 0
            ? []
            :
            [
                .. places
                    .Areas.Select(a => (Area: a, Even: hot * a.Pixels / all))
                    .Where(a => a.Area.Hot > Crowded * a.Even && a.Area.Hot - a.Even > Sigmas * Math.Sqrt(a.Even))
                    .OrderByDescending(a => a.Area.Hot / a.Even),
            ];
    }

    private static string Glow(FixedPatternProfile pattern)
    {
        if (pattern.Glow.Count == 0)
            return "No part of the sensor glows above its floor.";
        return string.Join(
            " ",
            pattern
                .Glow.Take(3)
                .Select(
                    (g, i) =>
                        $"{(i == 0 ? "It glows at" : "It also glows at")} the {g.Where}, brightest near column {g.X}, row "
                        + $"{g.Y}{(g.Peak is { } peak ? $": {QuantityText.Of(peak)} above the rest{At(pattern)}" : "")}; "
                        + $"{QuantityText.Number(100 * g.AreaShare, 2)} % of the sensor glows by more than "
                        + $"{QuantityText.Number(g.AreaThreshold, 2)} e⁻/px/s."
                )
        );
    }

    private static string? Hot(FixedPatternProfile pattern, long pixels)
    {
        if (pattern.Defects is not { } counts)
            return null;
        string threshold = pattern.Thresholds is { } limits
            ? $" (more than {QuantityText.Number(limits.HotRate)} e⁻/px/s above the typical pixel{At(pattern)})"
            : "";
        string share =
            pixels > 0 && counts.Hot > 0
                ? $", one in {QuantityText.Count(Math.Max(1, (long)Math.Round((double)pixels / counts.Hot)))}"
                : "";
        string start = $"{QuantityText.Count(counts.Hot)} pixels are hot{threshold}{share}";
        if (pattern.Places is not { Areas.Count: > 0 } places || counts.Hot == 0)
            return start + ".";
        IReadOnlyList<(DefectArea Area, double Even)> crowded = CrowdedAreas(places);
        return crowded.Count == 0
            ? start + "; they are spread evenly over the sensor."
            : $"{start}; they crowd in "
                + $"{string.Join(" and ", crowded.Take(2).Select(c => Crowd(c.Area, c.Even)))}.";
    }

    private static string Crowd(DefectArea area, double even) =>
        $"the part “{area.Where}” ({QuantityText.Count(area.Hot)}, where an even share would be "
        + $"{QuantityText.Number(even, 2)})";

    private static string? Clusters(FixedPatternProfile pattern)
    {
        if (pattern.Places is not { } places)
            return null;
        if (places.Clusters.Count == 0)
            return "No three hot pixels touch.";
        DefectCluster largest = places.Clusters[0];
        long count = Math.Max(pattern.Defects?.Clusters ?? 0, places.Clusters.Count);
        string largestWords = $"{QuantityText.Count(largest.Pixels)} of them near column {largest.X}, row {largest.Y}";
        return count == 1
            ? $"Three or more hot pixels touch in one place: {largestWords}."
            : $"Three or more hot pixels touch in {QuantityText.Count(count)} places; the largest group: {largestWords}.";
    }

    private static string? Lines(FixedPatternProfile pattern)
    {
        if (pattern.Places is not { } places)
            return null;
        if (places.Columns.Count + places.Rows.Count == 0)
            return "No column and no row stands out.";
        string[] parts = [Named("column", places.Columns), Named("row", places.Rows)];
        return $"Standing out: {string.Join("; ", parts.Where(p => p.Length > 0))}.";
    }

    private static string Named(string what, IReadOnlyList<int> numbers)
    {
        const int MaxShown = 12;
        return numbers.Count == 0
            ? ""
            : $"{(numbers.Count == 1 ? what : what + "s")} "
                + $"{string.Join(", ", numbers.Take(MaxShown))}{(numbers.Count > MaxShown ? $" and {numbers.Count - MaxShown} more" : "")}";
    }

    private static string? Others(FixedPatternProfile pattern)
    {
        if (pattern.Defects is not { } counts)
            return null;
        (long Count, string Words)[] kinds =
        [
            (counts.Flickering, "flicker"),
            (counts.Dead, "are dead"),
            (counts.Cold, "are cold"),
            (counts.Saturated, "are full in the longest dark"),
        ];
        string[] parts =
        [
            .. kinds
                .Where(k => k.Count > 0)
                .Select(k => $"{QuantityText.Count(k.Count)} {(k.Count == 1 ? Singular(k.Words) : k.Words)}"),
        ];
        return parts.Length == 0 ? null : $"Of all pixels, {string.Join(", ", parts)}.";
    }

    private static string Singular(string words) =>
        words == "flicker" ? "flickers" : words.Replace("are ", "is ", StringComparison.Ordinal);

    private static string At(FixedPatternProfile pattern) =>
        pattern.ReferenceTemperature is { } t ? $" at {QuantityText.Degrees(t)}" : "";
}
