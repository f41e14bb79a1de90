using SensorProfile.Fitting;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>Whether the channels of a filter array share a gain.</summary>
internal static class ChannelAgreement
{
    private const double SameWithin = 0.01;
    private const double ChanceOfDisagreement = 0.001;

    /// <summary>Weighted mean of the channels' gains; null, with a finding, when they differ by more than chance and by more than 1 %.</summary>
    public static Measurement? Gain(IReadOnlyList<Measurement?> gains, Rejections rejections)
    {
        if (gains.Count == 0 || gains.Any(g => g is null)) return null;
        if (gains.Count == 1) return gains[0];
        WeightedMean mean = WeightedMean.Of([.. gains.Select(g => g!.Value)], [.. gains.Select(g => g!.StandardUncertainty)]);
        double spread = gains.Max(g => Math.Abs(g!.Value - mean.Value)) / mean.Value;
        bool agree = Probability.ChiSquaredTail(mean.ChiSquared, gains.Count - 1) > ChanceOfDisagreement;
        if (agree || spread < SameWithin)
            return gains[0]! with { Value = mean.Value, StandardUncertainty = agree ? mean.Uncertainty : mean.BirgeUncertainty, Samples = gains.Sum(g => g!.Samples) };
        rejections.Add(Codes.ChannelsDiffer, Severity.Warning, Invariant(
            $"The gains of the colours differ by up to {100 * spread:0.#} %, more than chance: the camera scales its colours digitally, so there is no gain of the whole camera; use the gains of the single colours."));
        return null;
    }
}
