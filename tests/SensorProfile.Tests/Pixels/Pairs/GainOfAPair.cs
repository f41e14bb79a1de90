using SensorProfile.Pixels.Pairs;

namespace SensorProfile.Tests.Pixels.Pairs;

/// <summary>The system gain that a single scaled pair gives, to hold the pair's sums against known truth.</summary>
internal static class GainOfAPair
{
    /// <summary>K = [Σd² − σ²_read·Σ(1 + ρ²)] / Σ(a + ρ²b), ADU/e-: photon transfer (Janesick 2007) for one pair.</summary>
    /// <param name="pair">The pair.</param>
    /// <param name="readVariance">σ²_read of the channel, ADU², quantisation included as it is in d.</param>
    public static Measurement Of(ScaledPairChannel pair, Measurement readVariance)
    {
        double gain = (pair.SquaredDifferences - readVariance.Value * pair.ReadWeight) / pair.Light;
        double fromPair =
            pair.SquaredDifferences * PairVariance.RelativeStandardError(pair.Pixels, pair.ExcessKurtosis);
        double fromRead = readVariance.StandardUncertainty * pair.ReadWeight;
        double uncertainty = Math.Sqrt(fromPair * fromPair + fromRead * fromRead) / pair.Light;
        return new Measurement(gain, uncertainty, "ADU/e-", pair.Pixels, "photon transfer, one scaled flat pair");
    }
}
