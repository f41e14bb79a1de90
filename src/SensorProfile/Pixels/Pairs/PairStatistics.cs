using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Pixels.Pairs;

/// <summary>
/// Statistics of two frames taken under the same conditions, channel by channel, from one pass over both.
/// </summary>
/// <param name="NameA">Name of frame A.</param>
/// <param name="NameB">Name of frame B.</param>
/// <param name="Mosaic">Which pixels share a channel.</param>
/// <param name="Channels">One entry per channel, in the order of the mosaic.</param>
internal sealed record PairStatistics(
    string NameA,
    string NameB,
    ColourMosaic Mosaic,
    IReadOnlyList<PairChannel> Channels
)
{
    /// <summary>d = A − B of two 16-bit codes lies in −65535 … 65535.</summary>
    private const int Lowest = -65535,
        Values = 2 * 65535 + 1;

    /// <summary>Reads both frames once.</summary>
    /// <param name="a">Frame A.</param>
    /// <param name="b">Frame B, the same size.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="clip">Differences further than this many standard deviations from their mean are left out of the
    /// clipped moments.</param>
    /// <param name="options">How the walk is run.</param>
    public static PairStatistics Measure(
        IFrameSamples a,
        IFrameSamples b,
        ColourMosaic mosaic,
        double clip = 5,
        WalkOptions? options = null
    )
    {
        int width = a.Width,
            height = a.Height;
        var tallies = StripWalker.Tally(
            [a, b],
            () =>
                (Counts: new PositionCounts(Lowest, Values), A: new LineSumsTally(width), B: new LineSumsTally(width)),
            (strip, tally) =>
            {
                for (int row = 0; row < strip.Rows; row++)
                {
                    tally.Counts.Add(strip.FirstRow + row, strip.Row(0, row), strip.Row(1, row));
                    tally.A.Add(strip.FirstRow + row, strip.Row(0, row));
                    tally.B.Add(strip.FirstRow + row, strip.Row(1, row));
                }
            },
            options
        );
        var differences = PositionCounts.Merge([.. tallies.Select(tally => tally.Counts)], mosaic, Lowest, Values);
        var linesA = LineSumsTally.Merge(tallies.Select(tally => tally.A), mosaic, width, height);
        var linesB = LineSumsTally.Merge(tallies.Select(tally => tally.B), mosaic, width, height);
        return new PairStatistics(
            a.Name,
            b.Name,
            mosaic,
            [
                .. differences.Select(
                    (histogram, channel) =>
                        new PairChannel(
                            mosaic.Names[channel],
                            histogram.Sums,
                            ClippedMoments.Measure(histogram, clip),
                            linesA[channel],
                            linesB[channel]
                        )
                ),
            ]
        );
    }
}
