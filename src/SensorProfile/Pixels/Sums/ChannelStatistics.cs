namespace SensorProfile.Pixels.Sums;

/// <summary>Statistics of one channel of one frame.</summary>
/// <param name="Name">Name of the channel, for example "G1", or "mono".</param>
/// <param name="Codes">Histogram of the codes 0 … 65535; gives mean, median, quantiles, extremes and the share at a
/// code.</param>
/// <param name="Lines">Row and column sums.</param>
internal sealed record ChannelStatistics(string Name, IntegerHistogram Codes, LineSums Lines)
{
    /// <summary>
    /// Share of the channel's pixels at its own highest code: near 0 for a smooth tail, large when pixels pile up at
    /// the top code.
    /// </summary>
    public double ShareAtTop => Codes.ShareAt(Codes.Maximum);

    /// <summary>
    /// Mean and variance over the pixels, excluding those beyond <paramref name="limit"/> standard deviations.
    /// </summary>
    public ClippedMoments Clipped(double limit = 5) => ClippedMoments.Measure(Codes, limit);
}
