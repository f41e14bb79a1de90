namespace SensorProfile.Pixels.Pairs;

/// <summary>
/// One channel of a flat pair whose second frame was scaled by ρ: a = A − pedestal, b = B − pedestal, d = a − ρ·b.
/// </summary>
/// <remarks>
/// With shot noise and read noise the variance of d is K(a + ρ²b) + σ²_read(1 + ρ²); the sums run over the pixels kept
/// by the clip.
/// </remarks>
/// <param name="Name">Name of the channel.</param>
/// <param name="Pixels">n.</param>
/// <param name="Excluded">Pixels beyond the clip on d/√(a + ρ²b), and pixels with a + ρ²b ≤ 0.</param>
/// <param name="SquaredDifferences">Σd², ADU², divided by 1 − 1/m, m the number of pixels that share one ratio: each
/// ratio costs one degree of freedom.</param>
/// <param name="Light">Σ(a + ρ²b), ADU.</param>
/// <param name="ReadWeight">Σ(1 + ρ²).</param>
/// <param name="ExcessKurtosis">Excess kurtosis of d/√(a + ρ²b).</param>
/// <param name="MeanA">Mean of a over all pixels, ADU.</param>
/// <param name="MeanB">Mean of b over all pixels, ADU.</param>
/// <param name="RowRatios">Mean(a)/mean(b) for each row of the channel, whichever ratio was used.</param>
/// <param name="RatioChiSquare">χ² per degree of freedom of the row ratios about the ratio of the whole channel: 1 for
/// noise alone, much higher when rows flicker.</param>
internal sealed record ScaledPairChannel(
    string Name,
    long Pixels,
    long Excluded,
    double SquaredDifferences,
    double Light,
    double ReadWeight,
    double ExcessKurtosis,
    double MeanA,
    double MeanB,
    double[] RowRatios,
    double RatioChiSquare
)
{
    /// <summary>The signal that the pair's variance belongs to: Σ(a + ρ²b)/Σ(1 + ρ²), ADU above the pedestal.</summary>
    public double Signal => Light / ReadWeight;

    /// <summary>
    /// Temporal variance of one frame at <see cref="Signal"/>: Σd²/Σ(1 + ρ²), ADU², that is K·signal + σ²_read; read
    /// noise and quantisation are included.
    /// </summary>
    public Measurement TemporalVariance
    {
        get
        {
            double variance = SquaredDifferences / ReadWeight;
            return new Measurement(
                variance,
                variance * PairVariance.RelativeStandardError(Pixels, ExcessKurtosis),
                "ADU²",
                Pixels,
                "variance of a scaled pair difference"
            );
        }
    }
}
