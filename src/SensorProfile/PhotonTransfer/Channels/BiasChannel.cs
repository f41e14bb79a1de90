namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>Bias level and read noise of one channel.</summary>
/// <param name="Name">R, G1, G2, B or mono.</param>
/// <param name="Level">Mean level, ADU.</param>
/// <param name="Variance">Pooled temporal variance of the pairs, quantisation included; null without a pair.</param>
/// <param name="ReadNoiseAdu">Read noise, ADU; null when it was not measured or is too small for the codes.</param>
internal sealed record BiasChannel(string Name, Measurement Level, PooledVariance? Variance, Measurement? ReadNoiseAdu);
