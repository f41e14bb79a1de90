using SensorProfile.Fitting.Statistics;

namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>
/// Removes samples from the sets of a pixel one by one, each time the highest above the median of its set in units of
/// the noise: possibly a charged-particle hit.
/// </summary>
internal sealed class HighestSamples
{
    private SampleGroup[] groups;
    private readonly (double Height, int Sample)[] tops;

    /// <param name="groups">Sets of at least two frames; not changed.</param>
    public HighestSamples(SampleGroup[] groups)
    {
        this.groups = groups;
        tops = new (double, int)[groups.Length];
        for (int g = 0; g < groups.Length; g++)
            tops[g] = Top(groups[g]);
    }

    /// <summary>The sets with one more sample removed; a set left with a single sample is dropped.</summary>
    public SampleGroup[] Removed()
    {
        int at = 0;
        for (int g = 1; g < groups.Length; g++)
            if (tops[g].Height > tops[at].Height)
                at = g;
        groups = [.. groups];
        groups[at] = Without(groups[at], tops[at].Sample);
        tops[at] = groups[at].Values.Length > 1 ? Top(groups[at]) : (double.NegativeInfinity, 0);
        return [.. groups.Where(g => g.Values.Length > 1)];
    }

    private static (double Height, int Sample) Top(in SampleGroup group)
    {
        const int Few = 128;
        Span<double> sorted =
            group.Values.Length <= Few ? stackalloc double[group.Values.Length] : new double[group.Values.Length];
        group.Values.CopyTo(sorted);
        sorted.Sort();
        return (
            (sorted[^1] - OrderStatistics.MedianOfSorted(sorted)) / Math.Sqrt(group.Variance),
            Array.IndexOf(group.Values, sorted[^1])
        );
    }

    private static SampleGroup Without(in SampleGroup group, int sample) =>
        group with
        {
            Values = [.. group.Values.AsSpan(0, sample), .. group.Values.AsSpan(sample + 1)],
            StartSeconds = [.. group.StartSeconds.AsSpan(0, sample), .. group.StartSeconds.AsSpan(sample + 1)],
        };
}
