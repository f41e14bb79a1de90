using SensorProfile.DarkCurrent;
using SensorProfile.Fitting;
using SensorProfile.Pixels;

namespace SensorProfile.Characterisation;

/// <summary>Temporal variance of the pixels that most belong to: of the core of a pair's differences, and of that the median over windows. Glow in a corner and warm pixels, with a noise of their own,
/// are in the variance of the whole frame but hardly in this.</summary>
/// <remarks>σ² = ½·((q₈₄ − q₁₆)/2)², q the quantiles of A − B at Φ(±1), interpolated within whole codes; what rounding adds is the same at all exposures and leaves a slope alone.</remarks>
internal static class LocalVariance
{
    private const int MostAcross = 7, Side = 128, LeastSide = 32, FewestWindows = 9;
    private const int PairsOfSet = 2;
    private const double OneSigma = 0.8413447460685429;  // Φ(1)

    /// <summary>Straight line of the variance against exposure, e-² and e-²/s; null when the frame is too small for windows or there are no two exposures.</summary>
    /// <param name="sets">Darks of one temperature, and the bias frames.</param> <param name="exposureOf">Exposure of a set, s.</param> <param name="gains">e-/ADU of each channel.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    public static DarkSignalLineFit? Line(IReadOnlyList<ScreenedSet> sets, Func<ScreenedSet, double> exposureOf, IReadOnlyList<Measurement> gains, ColourMosaic mosaic)
    {
        List<(double, double, double)> points = [];
        foreach (ScreenedSet set in sets)
            foreach ((ScreenedFrame a, ScreenedFrame b) in set.Pairs().Take(PairsOfSet))
                if (Of(a.Samples, b.Samples, gains, mosaic) is { } median) points.Add((exposureOf(set), median.Value, median.Uncertainty));
        return points.Count < 2 ? null : DarkSignalLine.Fit(points, "e-²", pedestalJitters: false);
    }

    /// <summary>Median over the windows with its standard error by their scatter, e-², mean over the channels.</summary>
    private static (double Value, double Uncertainty)? Of(IFrameSamples a, IFrameSamples b, IReadOnlyList<Measurement> gains, ColourMosaic mosaic)
    {
        int across = Math.Min(MostAcross, a.Width / LeastSide), down = Math.Min(MostAcross, a.Height / LeastSide);
        if (across * down < FewestWindows) return null;
        int width = Math.Min(Side, a.Width / across) / 2 * 2, height = Math.Min(Side, a.Height / down) / 2 * 2;
        ushort[] rowsOfA = new ushort[height * a.Width], rowsOfB = new ushort[height * a.Width];
        List<double> values = [];
        for (int y = 0; y < down; y++)
        {
            int top = Place(y, down, a.Height, height);
            a.ReadRows(top, rowsOfA);
            b.ReadRows(top, rowsOfB);
            for (int x = 0; x < across; x++)
            {
                int left = Place(x, across, a.Width, width);
                values.Add(Enumerable.Range(0, mosaic.Channels).Average(c => gains[c].Value * gains[c].Value * Variance(Differences(c, left))));
            }
        }
        double spread = OrderStatistics.MadSigma([.. values]);
        return spread > 0 ? (OrderStatistics.Median([.. values]), OrderStatistics.MedianToMeanError * spread / Math.Sqrt(values.Count)) : null;

        int[] Differences(int channel, int left)
        {
            List<int> differences = new(width * height);
            for (int row = 0; row < height; row++)
                for (int column = left; column < left + width; column++)
                    if (mosaic.Channel(row, column) == channel) differences.Add(rowsOfA[row * a.Width + column] - rowsOfB[row * a.Width + column]);
            return [.. differences.Order()];
        }
    }

    private static double Variance(int[] sorted)
    {
        double sigma = (Quantile(sorted, OneSigma) - Quantile(sorted, 1 - OneSigma)) / 2;
        return sigma * sigma / 2;
    }

    /// <summary>Quantile of whole numbers that stand for values spread evenly over one code each.</summary>
    private static double Quantile(int[] sorted, double share)
    {
        int code = sorted[(int)(share * (sorted.Length - 1))], below = Array.FindIndex(sorted, v => v == code), above = Array.FindLastIndex(sorted, v => v == code) + 1;
        return code - 0.5 + (share * sorted.Length - below) / (above - below);
    }

    /// <summary>Windows stand in the middle of equal shares of the frame, at the beginning of a colour pattern.</summary>
    private static int Place(int index, int count, int length, int side) => (int)((index + 0.5) * length / count - side / 2.0) / 2 * 2;
}
