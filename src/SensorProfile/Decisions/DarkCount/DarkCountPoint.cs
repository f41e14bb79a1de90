namespace SensorProfile.Decisions.DarkCount;

/// <summary>What a number of darks costs.</summary>
/// <param name="Darks">Frames in the master.</param>
/// <param name="Loss">Rise of the stack's noise, %.</param>
internal sealed record DarkCountPoint(int Darks, double Loss);
