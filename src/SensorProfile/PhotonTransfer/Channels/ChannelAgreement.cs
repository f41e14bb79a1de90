using SensorProfile.Fitting.Statistics;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>Whether the channels of a filter array share a gain.</summary>
internal static class ChannelAgreement
{
    private const double SameWithin = 0.01;
    private const double ChanceOfDisagreement = 0.001;

    /// <summary>
    /// Weighted mean of the channels' gains; null, with a finding, when they differ by more than chance and by more
    /// than 1 %.
    /// </summary>
    /// <remarks>
    /// A curvature that few light levels cannot show belongs to the sensor and is the same in all channels. It neither
    /// explains a difference between channels, so their straight lines are compared, nor averages out over them.
    /// </remarks>
    public static Measurement? Gain(IReadOnlyList<GainFitResult?> fits, FindingsLog log)
    {
        if (fits.Count == 0 || fits.Any(f => f is null))
            return null;
        Measurement[] gains = [.. fits.Select(f => f!.Gain)],
            own = [.. fits.Select(f => f!.Curvature is null ? f.GainStraight : f.Gain)];
        if (gains.Length == 1)
            return gains[0];
        WeightedMean mean = WeightedMean.Combine(
            [.. own.Select(g => g.Value)],
            [.. own.Select(g => g.StandardUncertainty)]
        );
        double spread = own.Max(g => Math.Abs(g.Value - mean.Value)) / mean.Value;
        bool agree = Probability.ChiSquaredTail(mean.ChiSquared, gains.Length - 1) > ChanceOfDisagreement;
        if (agree || spread < SameWithin)
        {
            double uncertainty = agree ? mean.Uncertainty : mean.BirgeUncertainty;
            if (fits.Any(f => f!.Curvature is null))
            {
                mean = WeightedMean.Combine(
                    [.. gains.Select(g => g.Value)],
                    [.. gains.Select(g => g.StandardUncertainty)]
                );
                uncertainty = Math.Max(agree ? 0 : uncertainty, gains.Average(g => g.StandardUncertainty));
            }
            return gains[0] with
            {
                Value = mean.Value,
                StandardUncertainty = uncertainty,
                Samples = gains.Sum(g => g.Samples),
            };
        }
        log.Add(
            FindingCodes.ChannelsDiffer,
            Severity.Warning,
            Invariant($"The gains of the colours differ by up to {100 * spread:0.#} %, more than chance: ")
                + "the camera scales its colours digitally, so no single gain holds for the whole camera; "
                + "use the gain of each colour."
        );
        return null;
    }
}
