namespace SensorProfile.Profiles.Darks;

/// <summary>A sudden step of the black level.</summary>
/// <param name="Frame">The first frame after it.</param>
/// <param name="Step">Level of that frame minus that of the frame before, ADU.</param>
public sealed record BlackLevelJump(string Frame, Measurement Step);
