using SensorProfile.Fitting.Statistics;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.Screening;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>
/// Temporal variance of the ordinary pixels: from the core of the differences of a pair, then the median over windows.
/// Corner glow and warm pixels, with a noise of their own, raise the variance of the whole frame but hardly affect this
/// one.
/// </summary>
/// <remarks>σ² = ½·((e₂ − e₁)/(Φ⁻¹(F₂) − Φ⁻¹(F₁)))², with e the edges between codes of A − B whose shares F below come
/// closest to Φ(±1); exact for normal noise at any code width. Shares are (n + ½)/(N + 1), so that a code with all
/// pixels has edges too.</remarks>
internal static class LocalVariance
{
    private const int MaxAcross = 7,
        Side = 128,
        MinSide = 32,
        MinWindows = 9;
    private const int PairsOfSet = 2;
    private const double OneSigma = 0.8413447460685429; // Φ(1)

    /// <summary>
    /// Straight line of the variance against exposure, e-² and e-²/s; null when the frame is too small for windows or
    /// there are fewer than two exposures.
    /// </summary>
    /// <param name="sets">Darks of one temperature, and the bias frames.</param>
    /// <param name="exposureOf">Exposure of a set, s.</param>
    /// <param name="gains">e-/ADU of each channel.</param>
    /// <param name="mosaic">Which pixels share a channel.</param> <param name="codeStep">ADU between two codes.</param>
    public static DarkSignalFit? Slope(
        IReadOnlyList<ScreenedSet> sets,
        Func<ScreenedSet, double> exposureOf,
        IReadOnlyList<Measurement> gains,
        ColourMosaic mosaic,
        int codeStep
    )
    {
        List<(double, double, double)> points = [];
        foreach (ScreenedSet set in sets)
        foreach ((ScreenedFrame a, ScreenedFrame b) in set.Pairs().Take(PairsOfSet))
            if (Measure(a.Samples, b.Samples, gains, mosaic, codeStep) is { } median)
                points.Add((exposureOf(set), median.Value, median.Uncertainty));
        return points.Count < 2 ? null : DarkSignalSlope.Fit(points, "e-²", pedestalJitters: false);
    }

    /// <summary>
    /// Median over the windows with its standard error from their scatter, e-², averaged over the channels.
    /// </summary>
    private static (double Value, double Uncertainty)? Measure(
        IFrameSamples a,
        IFrameSamples b,
        IReadOnlyList<Measurement> gains,
        ColourMosaic mosaic,
        int codeStep
    )
    {
        int across = Math.Min(MaxAcross, a.Width / MinSide),
            down = Math.Min(MaxAcross, a.Height / MinSide);
        if (across * down < MinWindows)
            return null;
        int width = Math.Min(Side, a.Width / across) / 2 * 2,
            height = Math.Min(Side, a.Height / down) / 2 * 2;
        ushort[] rowsOfA = new ushort[height * a.Width],
            rowsOfB = new ushort[height * a.Width];
        List<double> values = [];
        for (int y = 0; y < down; y++)
        {
            int top = Place(y, down, a.Height, height);
            a.ReadRows(top, rowsOfA);
            b.ReadRows(top, rowsOfB);
            for (int x = 0; x < across; x++)
            {
                int left = Place(x, across, a.Width, width);
                values.Add(
                    Enumerable
                        .Range(0, mosaic.Channels)
                        .Average(c =>
                            gains[c].Value
                            * gains[c].Value
                            * Variance(IntegerHistogram.Tally(Differences(c, left)), codeStep)
                        )
                );
            }
        }
        double spread = OrderStatistics.MadSigma([.. values]);
        return spread > 0
            ? (
                OrderStatistics.Median([.. values]),
                OrderStatistics.MedianToMeanError * spread / Math.Sqrt(values.Count)
            )
            : null;

        IEnumerable<int> Differences(int channel, int left)
        {
            for (int row = 0; row < height; row++)
            for (int column = left; column < left + width; column++)
                if (mosaic.Channel(row, column) == channel)
                    yield return rowsOfA[row * a.Width + column] - rowsOfB[row * a.Width + column];
        }
    }

    /// <summary>Variance of one frame from the differences of two, ADU².</summary>
    internal static double Variance(IntegerHistogram differences, int codeStep)
    {
        (double Edge, double Score) low = Edge(1 - OneSigma),
            high = Edge(OneSigma);
        return Math.Pow((high.Edge - low.Edge) / (high.Score - low.Score), 2) / 2;

        (double, double) Edge(double share)
        {
            int nearest = 0;
            double score = 0,
                miss = double.PositiveInfinity;
            long below = 0;
            for (
                int code = differences.Minimum;
                code <= differences.Maximum + codeStep;
                below += differences[code], code += codeStep
            )
            {
                double own = (below + 0.5) / (differences.Count + 1.0);
                if (Math.Abs(own - share) < miss)
                    (nearest, score, miss) = (code, Probability.NormalQuantile(own), Math.Abs(own - share));
            }
            return (nearest - codeStep / 2.0, score);
        }
    }

    /// <summary>Windows are centred in equal parts of the frame and start on a colour pattern.</summary>
    private static int Place(int index, int count, int length, int side) =>
        (int)((index + 0.5) * length / count - side / 2.0) / 2 * 2;
}
