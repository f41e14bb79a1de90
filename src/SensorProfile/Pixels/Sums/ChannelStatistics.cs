namespace SensorProfile.Pixels.Sums;

/// <summary>One channel of one frame.</summary>
/// <param name="Name">Name of the channel, for example "G1", or "mono".</param>
/// <param name="Codes">How often each code 0 … 65535 occurs: mean, median, quantiles, extremes and shares at a code
/// come from here.</param>
/// <param name="Lines">Row and column sums.</param>
internal sealed record ChannelStatistics(string Name, IntegerHistogram Codes, LineSums Lines)
{
    /// <summary>
    /// Share of the channel's pixels at its own greatest code: near 0 for a smooth tail, large when light piles up at
    /// the top code.
    /// </summary>
    public double ShareAtTop => Codes.ShareAt(Codes.Maximum);

    /// <summary>
    /// Mean and variance over the pixels without those beyond <paramref name="limit"/> standard deviations.
    /// </summary>
    public ClippedMoments Clipped(double limit = 5) => ClippedMoments.Measure(Codes, limit);
}
