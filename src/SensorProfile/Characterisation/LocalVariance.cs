using SensorProfile.DarkCurrent;
using SensorProfile.Fitting;
using SensorProfile.Pixels;

namespace SensorProfile.Characterisation;

/// <summary>Temporal variance of the part of the sensor that most pixels belong to: the median over windows. Glow in a corner, with a noise of its own, is in the variance of the whole frame but not in this.</summary>
internal static class LocalVariance
{
    private const int MostAcross = 7, Side = 128, LeastSide = 32, FewestWindows = 9;
    private const int PairsOfSet = 2;

    /// <summary>Straight line of the variance against exposure, e-² and e-²/s; null when the frame is too small for windows or there are no two exposures.</summary>
    /// <param name="sets">Darks of one temperature, and the bias frames.</param> <param name="exposureOf">Exposure of a set, s.</param> <param name="gains">e-/ADU of each channel.</param>
    /// <param name="mosaic">Which pixels share a channel.</param> <param name="walk">Threads.</param>
    public static DarkSignalLineFit? Line(IReadOnlyList<ScreenedSet> sets, Func<ScreenedSet, double> exposureOf, IReadOnlyList<Measurement> gains, ColourMosaic mosaic, WalkOptions walk)
    {
        List<(double, double, double)> points = [];
        foreach (ScreenedSet set in sets)
            foreach ((ScreenedFrame a, ScreenedFrame b) in set.Pairs().Take(PairsOfSet))
                if (Of(a.Samples, b.Samples, gains, mosaic, walk) is { } median) points.Add((exposureOf(set), median.Value, median.Uncertainty));
        return points.Count < 2 ? null : DarkSignalLine.Fit(points, "e-²", pedestalJitters: false);
    }

    /// <summary>Median over the windows with its standard error by the noise of each, e-², mean over the channels.</summary>
    private static (double Value, double Uncertainty)? Of(IFrameSamples a, IFrameSamples b, IReadOnlyList<Measurement> gains, ColourMosaic mosaic, WalkOptions walk)
    {
        int across = Math.Min(MostAcross, a.Width / LeastSide), down = Math.Min(MostAcross, a.Height / LeastSide);
        if (across * down < FewestWindows) return null;
        int width = Math.Min(Side, a.Width / across) / 2 * 2, height = Math.Min(Side, a.Height / down) / 2 * 2;
        var values = new double[across * down];
        double squares = 0;
        for (int i = 0; i < values.Length; i++)
        {
            int left = Place(i % across, across, a.Width, width), top = Place(i / across, down, a.Height, height);
            PairStatistics pair = PairStatistics.Of(new WindowSamples(a, left, top, width, height), new WindowSamples(b, left, top, width, height), mosaic, options: walk);
            double[] factors = [.. gains.Select(g => g.Value * g.Value / gains.Count)];
            values[i] = pair.Channels.Select((c, k) => factors[k] * c.TemporalVariance.Value).Sum();
            squares += pair.Channels.Select((c, k) => Math.Pow(factors[k] * c.TemporalVariance.StandardUncertainty, 2)).Sum();
        }
        return (OrderStatistics.Median(values), OrderStatistics.MedianToMeanError * Math.Sqrt(squares) / values.Length);
    }

    /// <summary>Windows stand in the middle of equal shares of the frame.</summary>
    private static int Place(int index, int count, int length, int side) => (int)((index + 0.5) * length / count - side / 2.0) / 2 * 2;
}
