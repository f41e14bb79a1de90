namespace SensorProfile.Frames.Sets;

/// <summary>Frames of one key and one exposure, ordered by time, then by name.</summary>
/// <param name="Key">What the frames share.</param>
/// <param name="ExposureSeconds">Median exposure, s; null when unknown.</param>
/// <param name="Frames">The frames.</param>
internal sealed record FrameSeries(SeriesKey Key, double? ExposureSeconds, IReadOnlyList<Frame> Frames)
{
    // s; biases below this all count as "the shortest exposure", whatever the header states
    private const double ShortestBias = 0.001;

    /// <summary>
    /// Sorts frames into series. A frame with unknown camera, filter or (for bias) exposure joins a series when only
    /// one fits.
    /// </summary>
    public static IReadOnlyList<FrameSeries> Gather(IReadOnlyList<Frame> frames)
    {
        ILookup<(int, int), string?> cameras = frames.ToLookup(f => (f.Width, f.Height), f => f.Camera);
        ILookup<(int, int, string?), string?> filters = frames.ToLookup(
            f => (f.Width, f.Height, f.Camera),
            f => f.ColourFilter
        );
        SeriesKey KeyOf(Frame f)
        {
            string? camera = f.Camera ?? OnlyOne(cameras[(f.Width, f.Height)]);
            return new SeriesKey(
                f.Kind,
                camera,
                f.Width,
                f.Height,
                f.ColourFilter ?? OnlyOne(filters[(f.Width, f.Height, camera)]),
                f.Settings,
                f.Place.Top,
                f.Place.Left,
                f.SetLabel
            );
        }
        return [.. frames.GroupBy(KeyOf).SelectMany(group => ByExposure(group.Key, [.. group]))];
    }

    private static IEnumerable<FrameSeries> ByExposure(SeriesKey key, List<Frame> frames)
    {
        List<Frame> known = [.. frames.Where(f => f.ExposureSeconds is not null).OrderBy(f => f.ExposureSeconds)];
        List<Frame> unknown = [.. frames.Where(f => f.ExposureSeconds is null)];
        List<List<Frame>> groups = [];
        foreach (Frame frame in known)
        {
            // compared with the shortest of the group, not with the previous one, so that differences cannot add up
            if (
                groups.Count > 0
                && IsSame(key.Kind, groups[^1][0].ExposureSeconds!.Value, frame.ExposureSeconds!.Value)
            )
                groups[^1].Add(frame);
            else
                groups.Add([frame]);
        }
        if (key.Kind == FrameKind.Bias && groups.Count == 1)
            groups[0].AddRange(unknown);
        else if (unknown.Count > 0)
            groups.Add(unknown);
        return groups.Select(group => new FrameSeries(
            key,
            MedianExposure(group),
            [.. group.Order(FrameOrder.ByTimeThenName)]
        ));
    }

    private static bool IsSame(FrameKind kind, double shortest, double seconds) =>
        SameExposure.Test(shortest, seconds) || (kind == FrameKind.Bias && seconds <= ShortestBias);

    private static double? MedianExposure(List<Frame> group)
    {
        double[] exposures = [.. group.Select(f => f.ExposureSeconds).OfType<double>().Order()];
        return exposures.Length > 0 ? exposures[exposures.Length / 2] : null;
    }

    private static string? OnlyOne(IEnumerable<string?> values)
    {
        List<string> distinct = [.. values.OfType<string>().Distinct()];
        return distinct.Count == 1 ? distinct[0] : null;
    }
}
