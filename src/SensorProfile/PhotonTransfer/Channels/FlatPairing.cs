using SensorProfile.Fitting.Statistics;
using SensorProfile.Screening;

namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>Pairs flats of nearly equal brightness.</summary>
internal static class FlatPairing
{
    /// <summary>
    /// Largest drift of the light within a pair; up to here it is scaled away, beyond it two frames are not a pair.
    /// </summary>
    public const double MaxDrift = 0.05;

    /// <summary>Drift within a pair that is worth reporting.</summary>
    public const double NotableDrift = 0.02;

    /// <summary>
    /// Row ratios that scatter by more than this mean flicker, not drift; then only row by row can frames be compared.
    /// </summary>
    private const double FlickerScatter = 0.02;

    private const double MaxFlicker = 2;

    /// <summary>
    /// Goes through a set in time order: two consecutive frames of equal brightness are a pair; otherwise the first one
    /// is skipped.
    /// </summary>
    /// <returns>The pairs, and the frames without a partner.</returns>
    public static (IReadOnlyList<(ScreenedFrame A, ScreenedFrame B)> Pairs, IReadOnlyList<ScreenedFrame> Alone) Pair(
        ScreenedSet set,
        double pedestal
    )
    {
        var pairs = new List<(ScreenedFrame, ScreenedFrame)>();
        var alone = new List<ScreenedFrame>();
        int i = 0;
        while (i < set.Frames.Count)
        {
            if (i + 1 < set.Frames.Count && MayPair(set.Frames[i], set.Frames[i + 1], pedestal))
            {
                pairs.Add((set.Frames[i], set.Frames[i + 1]));
                i += 2;
            }
            else
                alone.Add(set.Frames[i++]);
        }
        return (pairs, alone);
    }

    private static bool MayPair(ScreenedFrame a, ScreenedFrame b, double pedestal)
    {
        double ratio = Ratio(b, a, pedestal);
        if (Math.Abs(ratio - 1) <= MaxDrift)
            return true;
        return ratio is > 1 / MaxFlicker and < MaxFlicker && Flickers(a, b, pedestal);
    }

    /// <summary>Brightness of the first frame over that of the second.</summary>
    public static double Ratio(ScreenedFrame first, ScreenedFrame second, double pedestal) =>
        (first.Channels.Average(c => c.Mean) - pedestal) / (second.Channels.Average(c => c.Mean) - pedestal);

    private static bool Flickers(ScreenedFrame a, ScreenedFrame b, double pedestal)
    {
        double[] ratios =
        [
            .. a.RowMeans.Zip(b.RowMeans, (x, y) => (x - pedestal) / (y - pedestal)).Where(double.IsFinite),
        ];
        return ratios.Length > 8 && OrderStatistics.MadSigma(ratios) > FlickerScatter;
    }
}
