using SensorProfile.Fitting.Statistics;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Response;
using SensorProfile.Screening;

namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>Temporal noise of every pixel from the bias frames.</summary>
internal static class NoiseSpread
{
    /// <summary>With fewer frames, the standard deviation of a single pixel says little.</summary>
    public const int MinFrames = 8;

    private const int Bins = 120;

    /// <summary>
    /// Reduces the per-pixel variances of the bias frames to their distribution and the read-noise map, and drops the
    /// variances from the result: nothing needs that map of the whole sensor any more.
    /// </summary>
    public static BiasResult Take(ModeFrames mode, BiasResult bias, FlatResult flats)
    {
        if (bias.Moments is not { } moments)
            return bias;
        double[]? gains = flats.ElectronsPerAdu(mode.Mosaic);
        return bias with
        {
            NoiseDistribution = Distribution(moments, mode.CodeStep.Step, gains),
            ReadNoiseMap =
                gains is not null && moments.Frames >= MinFrames
                    ? Map(moments, mode.CodeStep.Step, mode.Mosaic, gains)
                    : null,
            Moments = moments with { Variance = [] },
        };
    }

    /// <summary>
    /// Percentiles and histogram of the standard deviation over pixels; null with fewer than 8 frames.
    /// </summary>
    /// <param name="moments">Per-pixel variance of the bias frames, ADU².</param>
    /// <param name="codeStep">ADU between two codes: its quantisation noise, step²/12, is left in, as in the scatter of
    /// a pixel.</param>
    /// <param name="gains">Gain of each channel, e-/ADU; null to stay in ADU.</param>
    public static NoiseDistribution? Distribution(PixelMoments moments, int codeStep, double[]? gains)
    {
        if (moments.Frames < MinFrames)
            return null;
        double factor = gains is { Length: 1 } ? gains[0] : 1;
        float[] variances = moments.Variance;
        double Sigma(float variance) => Math.Sqrt(variance) * factor;
        double squares = 0,
            sum = 0;
        foreach (float variance in variances)
        {
            double s = Sigma(variance);
            (squares, sum) = (squares + s * s, sum + s);
        }
        double[] shares = [0.5, 0.9, 0.99, 0.999, 0.9995];
        int Below(double p) => (int)(p * (variances.Length - 1));
        float[] around = OrderedRanks.Select(
            variances,
            [.. shares.SelectMany(p => (long[])[Below(p), Math.Min(Below(p) + 1, variances.Length - 1)])]
        );
        double Quantile(double p)
        {
            int at = 2 * Array.IndexOf(shares, p);
            double below = Sigma(around[at]),
                above = Sigma(around[at + 1]);
            return below + (p * (variances.Length - 1) - Below(p)) * (above - below);
        }
        double top = Quantile(0.9995) * 1.05,
            width = top > 0 ? top / Bins : codeStep * factor / (double)Bins;
        long[] counts = new long[Bins];
        foreach (float variance in variances)
            counts[Math.Min(Bins - 1, (int)(Sigma(variance) / width))]++;
        return new NoiseDistribution
        {
            Frames = moments.Frames,
            Unit = gains is { Length: 1 } ? "e-" : "ADU",
            Median = Quantile(0.5),
            Mean = sum / variances.Length,
            Rms = Math.Sqrt(squares / variances.Length),
            Percentile90 = Quantile(0.9),
            Percentile99 = Quantile(0.99),
            Percentile999 = Quantile(0.999),
            BinEdges = [.. Enumerable.Range(0, Bins).Select(i => i * width)],
            Counts = counts,
        };
    }

    /// <summary>Standard deviation of every pixel, e-, quantisation removed.</summary>
    public static Half[] Map(PixelMoments moments, int codeStep, ColourMosaic mosaic, double[] gains)
    {
        var map = new Half[moments.Variance.Length];
        double quantisation = codeStep * codeStep / 12.0;
        for (int i = 0; i < map.Length; i++)
        {
            double gain = gains[mosaic.Channel(i / moments.Width, i % moments.Width)];
            map[i] = (Half)(Math.Sqrt(Math.Max(0, moments.Variance[i] - quantisation)) * gain);
        }
        return map;
    }
}
