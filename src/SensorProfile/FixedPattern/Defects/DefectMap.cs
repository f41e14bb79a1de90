using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.RowsAndColumns;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Defects;

/// <summary>Defects of every pixel, and their counts.</summary>
/// <param name="Classes">One per pixel.</param> <param name="Counts">Counts by kind.</param>
/// <param name="Columns">0-based columns that stand out, in the dark or in any other measurement.</param>
/// <param name="Rows">0-based rows that stand out.</param>
internal sealed record DefectMap(
    DefectClass[] Classes,
    DefectCounts Counts,
    IReadOnlyList<int> Columns,
    IReadOnlyList<int> Rows
)
{
    // of the warm threshold: a whole line may be fainter than a single pixel must be
    private const double LineShare = 0.25;

    /// <summary>Columns and rows that stand out in the dark.</summary>
    public IReadOnlyList<DefectLine> Lines { get; init; } = [];

    /// <summary>Classifies every pixel.</summary>
    /// <param name="input">The camera mode.</param>
    /// <param name="maps">Rates and flags.</param>
    /// <param name="thresholds">Thresholds, all of them set.</param>
    /// <param name="response">Cold and dead pixels by their response to light; null without flats.</param>
    public static DefectMap Classify(
        PatternInput input,
        RateMaps maps,
        DefectThresholds thresholds,
        DefectClass[]? response
    )
    {
        var classes = new DefectClass[input.Pixels];
        Parallel.For(0, input.Height, row =>
        {
            for (int i = row * input.Width; i < (row + 1) * input.Width; i++)
                classes[i] = Judge(maps, thresholds, response, i);
        });
        double least = Math.Max(LineShare * thresholds.WarmRate, maps.TypicalUncertainty);
        DefectLine[] lines =
        [
            .. LineDefects.InDark(maps.Rate, input.Width, input.Height, least).Where(line => HasValues(line, input)),
        ];
        int[] columns = Numbers(LineDirection.Column),
            rows = Numbers(LineDirection.Row);
        foreach (int column in columns)
            for (int i = column; i < classes.Length; i += input.Width)
                classes[i] |= DefectClass.Line;
        foreach (int row in rows)
            for (int i = row * input.Width; i < (row + 1) * input.Width; i++)
                classes[i] |= DefectClass.Line;
        if (input.Missing is { } missing)
            for (int i = 0; i < classes.Length; i++)
                if (missing[i])
                    classes[i] = DefectClass.None;
        return new(classes, Count(classes, columns.Length, rows.Length, maps, input), columns, rows) { Lines = lines };

        // Together with those that stand out in bias frames or flats.
        int[] Numbers(LineDirection direction) =>
            [
                .. lines
                    .Concat(input.Lines)
                    .Where(l => l.Direction == direction)
                    .Select(l => l.Number - 1)
                    .Distinct()
                    .Order(),
            ];
    }

    private static bool HasValues(DefectLine line, PatternInput input)
    {
        if (input.Missing is not { } missing)
            return true;
        bool column = line.Direction == LineDirection.Column;
        int length = column ? input.Height : input.Width;
        return Enumerable
            .Range(0, length)
            .Any(k => !missing[column ? k * input.Width + line.Number - 1 : (line.Number - 1) * input.Width + k]);
    }

    private static DefectClass Judge(RateMaps maps, DefectThresholds thresholds, DefectClass[]? response, int i)
    {
        PixelFlags flags = maps.Flags[i];
        double above = maps.Rate[i] - maps.Typical,
            doubt = thresholds.Significance * maps.Uncertainty[i];
        DefectClass found = DefectClass.None;
        if (above > thresholds.HotRate && above > doubt)
            found = DefectClass.Hot;
        else if (above > thresholds.WarmRate && above > doubt)
            found = DefectClass.Warm;
        else if (maps.Typical > 0 && maps.Rate[i] < thresholds.ColdShare * maps.Typical && -above > doubt)
            found = DefectClass.Cold;
        if (response is not null)
            found |= response[i];
        if (flags.HasFlag(PixelFlags.Saturated))
            found |= DefectClass.Saturated | DefectClass.Hot;
        if (flags.HasFlag(PixelFlags.NonLinear))
            found |= DefectClass.NonLinear;
        if ((flags & (PixelFlags.Flickering | PixelFlags.Levelled)) != 0)
            found |= DefectClass.Flickering;
        return found & ~(found.HasFlag(DefectClass.Hot) ? DefectClass.Warm : 0);
    }

    private static DefectCounts Count(DefectClass[] classes, int columns, int rows, RateMaps maps, PatternInput input)
    {
        long[] counts = new long[8];
        foreach (DefectClass found in classes)
            for (int bit = 0; found != 0 && bit < 8; bit++)
                if (((int)found >> bit & 1) != 0)
                    counts[bit]++;
        return new DefectCounts
        {
            Warm = counts[0],
            Hot = counts[1],
            Cold = counts[2],
            Dead = counts[3],
            Saturated = counts[4],
            NonLinear = counts[5],
            Flickering = counts[6],
            Telegraph = maps.Levelled.Fits.Count,
            FlickeringAtLeast = input.TestLevels ? maps.Excess.AtLeast(maps.Levelled.Fits.Keys) : null,
            Columns = columns,
            Rows = rows,
            Clusters = PixelClusters
                .Find(input.Width, input.Height, i =>
                    classes[i].HasFlag(DefectClass.Hot) && !classes[i].HasFlag(DefectClass.Line)
                )
                .Count,
        };
    }
}
