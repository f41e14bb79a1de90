using SensorProfile.Pixels.Sums;

namespace SensorProfile.Pixels.Pairs;

/// <summary>One channel of a pair of frames; d = A − B.</summary>
/// <param name="Name">Name of the channel, for example "G1", or "mono".</param>
/// <param name="Differences">n, Σd and Σd². The histogram behind them is dropped: it takes megabytes when a particle
/// hit is bright, and a session has hundreds of pairs.</param>
/// <param name="Clipped">Moments of d without outliers (particle hits, telegraph pixels).</param>
/// <param name="A">Row and column sums of A.</param>
/// <param name="B">Row and column sums of B.</param>
internal sealed record PairChannel(string Name, SampleSums Differences, ClippedMoments Clipped, LineSums A, LineSums B)
{
    /// <summary>
    /// Temporal variance without outliers, divisor n − 1, ADU²; its standard error allows for excess kurtosis.
    /// Quantisation is included.
    /// </summary>
    /// <remarks>
    /// σ² = ½·n/(n−1)·(mean(d²) − mean(d)²) over the kept pixels. EMVA Standard 1288, Release 4.0 Linear, with an
    /// iterated clip.
    /// </remarks>
    public Measurement TemporalVariance =>
        new(
            Clipped.Variance * Clipped.Count / (Clipped.Count - 1) / 2,
            Clipped.StandardErrorOfVariance / 2,
            "ADU²",
            Clipped.Count,
            "clipped variance of a pair difference, EMVA 1288"
        );
}
