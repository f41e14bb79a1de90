namespace SensorProfile.RawCheck;

/// <summary>A piece of evidence that the camera removes hot pixels from its frames.</summary>
/// <param name="Words">The evidence in words, part of a sentence.</param>
/// <param name="ReachAdu">Excess over the surroundings beyond which pixels are missing, ADU, as far as the evidence
/// tells.</param>
internal sealed record SuppressionSign(string Words, double ReachAdu);
