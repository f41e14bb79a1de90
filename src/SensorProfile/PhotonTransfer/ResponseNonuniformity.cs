using SensorProfile.Pixels;

namespace SensorProfile.PhotonTransfer;

/// <summary>Photo-response nonuniformity of the single pixels, from a mean flat.</summary>
/// <remarks>
/// EMVA Standard 1288, Release 4.0 Linear: PRNU = √(s²_light − s²_dark)/(μ_light − μ_dark), each spatial variance less the temporal noise left in the mean of L frames, σ²/L.
/// A telescope's flat has vignetting and dust that are no property of the sensor, so s² is taken as half the mean square of the difference between a pixel and the next one
/// of its colour in the row: a gradient cancels, and so does light that flickers row by row. Pixels that differ by more than 5 standard deviations are left out.
/// </remarks>
internal static class ResponseNonuniformity
{
    private const double ClipSigmas = 5;

    /// <param name="light">Mean flat: per-pixel mean and temporal variance.</param>
    /// <param name="dark">Mean bias or dark: the same; null when there is none (its pattern then stays in the result).</param>
    /// <param name="mosaic">Filter array.</param>
    /// <param name="channel">Channel of it.</param>
    /// <param name="pedestal">Level without light, ADU.</param>
    /// <returns>In %, null when nothing is left after the noise is removed or there is no light. A value that noise explains is given as 0 with its uncertainty.</returns>
    public static Measurement? Of(PixelMoments light, PixelMoments? dark, ColourMosaic mosaic, int channel, double pedestal)
    {
        NeighbourSpread lit = NeighbourSpread.Of(light, mosaic, channel, ClipSigmas);
        double signal = lit.Mean - pedestal;
        if (signal <= 0 || lit.Pairs < 100) return null;
        NeighbourSpread unlit = dark is null ? default : NeighbourSpread.Of(dark, mosaic, channel, ClipSigmas);
        double pattern = lit.PatternVariance - unlit.PatternVariance;

        // Overlapping differences share pixels, which raises the variance of the estimate to 3s⁴/n; the noise that was removed counts with its own error.
        double uncertainty = Math.Sqrt(3.0 / lit.Pairs) * lit.TotalVariance;
        double share = Math.Sqrt(Math.Max(0, pattern)) / signal;
        double shareUncertainty = pattern > uncertainty ? uncertainty / (2 * share * signal * signal) : Math.Sqrt(uncertainty) / signal;
        return new(100 * share, 100 * shareUncertainty, "%", lit.Pairs, "neighbours of one colour in the mean flat, temporal and dark pattern noise removed (EMVA 1288)");
    }
}
