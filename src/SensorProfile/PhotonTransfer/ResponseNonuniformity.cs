using SensorProfile.Fitting.Statistics;

namespace SensorProfile.PhotonTransfer;

/// <summary>Photo-response nonuniformity (PRNU) of single pixels, from a mean flat.</summary>
/// <remarks>
/// EMVA Standard 1288, Release 4.0 Linear: PRNU = √(s²_light − s²_dark)/(μ_light − μ_dark), each spatial variance less
/// the temporal noise left in the mean of L frames, σ²/L. A flat taken through a telescope has vignetting and dust that
/// do not belong to the sensor, so s² is half the mean square of the difference between a pixel and the next one of its
/// colour in the row: gradients cancel, and so does light that flickers from row to row. Differences beyond 5 standard
/// deviations are left out.
/// </remarks>
internal static class ResponseNonuniformity
{
    /// <summary>Differences beyond this many standard deviations are left out.</summary>
    public const double ClipSigmas = 5;

    /// <param name="light">Spread in the mean of the flats.</param>
    /// <param name="lightNoise">σ²/L: temporal variance of one flat over the flats in the mean, ADU². Measured on
    /// pairs, so a lamp that drifts between the flats does not enter.</param>
    /// <param name="dark">Spread in the mean of the bias frames; null without one (the bias pattern then stays in the
    /// result).</param>
    /// <param name="darkNoise">The same for the bias frames, ADU².</param>
    /// <param name="pedestal">Level without light, ADU.</param>
    /// <returns>PRNU, %; null without light. A pattern that noise explains is given as 0 with the uncertainty that
    /// remains.</returns>
    public static Measurement? Measure(
        NeighbourSpread light,
        double lightNoise,
        NeighbourSpread? dark,
        double darkNoise,
        double pedestal
    )
    {
        double signal = light.Mean - pedestal;
        if (signal <= 0 || light.Pairs < 100)
            return null;
        double pattern = light.Variance - lightNoise - (dark is { } d ? d.Variance - darkNoise : 0);

        // Overlapping differences share pixels, which raises the variance of the estimate to 3s⁴/n; the noise that was
        // subtracted is known to √(2/n) per frame.
        double uncertainty =
            Math.Sqrt(3.0 * light.Variance * light.Variance + 2.0 * lightNoise * lightNoise) / Math.Sqrt(light.Pairs);
        double share = Math.Sqrt(Math.Max(0, pattern)) / signal;
        double shareUncertainty = OfTheRoot(pattern, uncertainty) / signal;
        if (!double.IsFinite(share) || !double.IsFinite(shareUncertainty))
            return null;
        return new(
            100 * share,
            100 * shareUncertainty,
            "%",
            light.Pairs,
            "neighbours of one colour in the mean flat, temporal and dark pattern noise removed (EMVA 1288)"
        );
    }

    /// <summary>
    /// Standard uncertainty of √s² for which ±1.96 of it reaches both ends of the variance's own 95 % interval. Far from 0 that
    /// is u/(2s); near it the root bends, and u/(2s) would deny a pattern of 0 one time in seven where there is none.
    /// </summary>
    private static double OfTheRoot(double variance, double uncertainty)
    {
        double reach = Probability.Normal95 * uncertainty,
            root = Math.Sqrt(Math.Max(0, variance)),
            lowest = Math.Sqrt(Math.Max(0, variance - reach)),
            highest = Math.Sqrt(Math.Max(0, variance) + reach);
        return Math.Max(root - lowest, highest - root) / Probability.Normal95;
    }
}
