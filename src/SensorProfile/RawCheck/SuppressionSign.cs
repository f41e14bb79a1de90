namespace SensorProfile.RawCheck;

/// <summary>Evidence that the camera takes hot pixels out of its frames.</summary>
/// <param name="Words">Part of a sentence.</param>
/// <param name="ReachAdu">Distance above the surroundings from which on pixels are missing, ADU, as far as the evidence
/// tells.</param>
internal sealed record SuppressionSign(string Words, double ReachAdu);
