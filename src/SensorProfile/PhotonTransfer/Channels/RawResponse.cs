using SensorProfile.Profiles.Response;
using static System.FormattableString;

namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>
/// Tests whether the noise of the flats grows with their light as it does in raw data; if not, there is no gain.
/// </summary>
/// <remarks>
/// In raw data σ² = σ²_dark + Kμ(1 + aμ) with a small a (EMVA Standard 1288; Astier et al. 2019). Values that were
/// stretched (gamma, logarithm) or cut to 8 bits depart from this by far more than any sensor does: after a gamma curve
/// the variance hardly grows at all. The limits below are far beyond what the noise of a small sensor, a drifting lamp
/// or the brighter-fatter effect can cause.
/// </remarks>
internal static class RawResponse
{
    private const double MaxMisfit = 0.2; // of the variance, beyond chance
    private const double MaxDoubt = 0.25; // of the gain
    private const double MaxBend = 10; // linearity error, %, when the codes too suggest a stretch

    /// <summary>The evidence against raw data, in words; null when there is none.</summary>
    /// <param name="channels">The channels with their fits.</param>
    /// <param name="scaledCodes">Whether codes are missing or doubled, as after a digital stretch.</param>
    public static string? EvidenceAgainst(IReadOnlyList<FlatChannel> channels, bool scaledCodes)
    {
        FlatChannel[] fitted = [.. channels.Where(c => c.Fit is not null)];
        if (fitted.Length == 0)
            return null;
        double misfit = fitted.Max(Misfit),
            doubt = fitted.Max(c => c.Fit!.Gain.StandardUncertainty / c.Fit.Gain.Value),
            bend = channels.Max(c => c.Linearity?.Error.Value ?? 0);
        List<string> evidence = [];
        if (misfit > MaxMisfit)
            evidence.Add(
                Invariant($"the variance of the flats misses the photon-transfer curve by {100 * misfit:0} %")
            );
        if (doubt > MaxDoubt)
            evidence.Add(Invariant($"the gain that fits best is uncertain by {100 * doubt:0} %"));
        if (bend > MaxBend && (scaledCodes || evidence.Count > 0))
            evidence.Add(
                Invariant($"the signal departs from a straight line by {bend:0} %")
                    + (scaledCodes ? ", and codes are missing or doubled" : "")
            );
        return evidence.Count == 0 ? null : string.Join("; ", evidence);
    }

    /// <summary>
    /// Root mean square of (variance over fitted variance − 1) over the pairs in the fit, less the part that chance
    /// explains, 2/(n − 1) for n pixels.
    /// </summary>
    internal static double Misfit(FlatChannel channel)
    {
        GainFitResult fit = channel.Fit!;
        double bend = fit.Selected == GainForm.Curved ? fit.Curvature?.Value ?? 0 : 0;
        double[] squares =
        [
            .. channel
                .Points.Where((_, i) => fit.Used[i])
                .Select(p =>
                {
                    double fitted = channel.DarkVariance + fit.Slope.Value * p.Signal * (1 + bend * p.Signal);
                    double miss = fitted > 0 ? p.Variance / fitted - 1 : 1;
                    return miss * miss - 2.0 / Math.Max(1, p.Pixels - 1);
                }),
        ];
        return Math.Sqrt(Math.Max(0, squares.Average()));
    }
}
