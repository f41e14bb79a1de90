using SensorProfile.Fitting.Statistics;
using SensorProfile.Screening;

namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>Pairs flats whose light is nearly the same.</summary>
internal static class FlatPairing
{
    /// <summary>Drift of the light inside a pair that is scaled away; more is no pair.</summary>
    public const double MaxDrift = 0.05;

    /// <summary>Drift inside a pair that is worth saying.</summary>
    public const double NotableDrift = 0.02;

    /// <summary>
    /// Row ratios that scatter by more than this are flicker, not drift; then only the rows can be compared.
    /// </summary>
    private const double FlickerScatter = 0.02;

    private const double MaxFlicker = 2;

    /// <summary>
    /// Walks a set in order of time: two frames that follow each other and agree in light are a pair; otherwise the
    /// first of them is passed over.
    /// </summary>
    /// <returns>The pairs, and the frames that found no partner.</returns>
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

    /// <summary>Light of the first over that of the second.</summary>
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
