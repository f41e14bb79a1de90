using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Defects;

/// <summary>Describes where the defects are.</summary>
internal static class DefectPlacing
{
    private const int MaxClusters = 20,
        MaxLines = 50;
    private static readonly string[] words =
    [
        "upper left",
        "upper middle",
        "upper right",
        "middle left",
        "centre",
        "middle right",
        "lower left",
        "lower middle",
        "lower right",
    ];

    /// <summary>Places of the defects in a map.</summary>
    public static DefectPlaces Place(DefectMap defects, int width, int height)
    {
        long[] hot = new long[9];
        bool Counts(int i) =>
            defects.Classes[i].HasFlag(DefectClass.Hot) && !defects.Classes[i].HasFlag(DefectClass.Line);
        for (int i = 0; i < defects.Classes.Length; i++)
            if (Counts(i))
                hot[Third(i / width, height) * 3 + Third(i % width, width)]++;
        return new DefectPlaces
        {
            Areas =
            [
                .. words.Select((where, k) => new DefectArea(where, hot[k], Size(k / 3, height) * Size(k % 3, width))),
            ],
            Clusters =
            [
                .. PixelClusters
                    .Find(width, height, Counts)
                    .OrderByDescending(c => c.Count)
                    .Take(MaxClusters)
                    .Select(c => new DefectCluster(
                        (int)Math.Round(c.Average(i => i % width)) + 1,
                        (int)Math.Round(c.Average(i => i / width)) + 1,
                        c.Count
                    )),
            ],
            Columns = [.. defects.Columns.Take(MaxLines).Select(c => c + 1)],
            Rows = [.. defects.Rows.Take(MaxLines).Select(r => r + 1)],
        };
    }

    private static int Third(int place, int length) => (int)(3L * place / length);

    private static long Size(int third, int length) =>
        Enumerable.Range(0, length).LongCount(place => Third(place, length) == third);
}
