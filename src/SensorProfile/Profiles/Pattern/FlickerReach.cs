namespace SensorProfile.Profiles.Pattern;

/// <summary>Which part of the pixels that jump by a given step at read-out the frames could show.</summary>
/// <param name="StepNoise">Step over the read noise.</param>
/// <param name="DwellSeconds">Mean time in either level, s.</param>
/// <param name="Share">Part of such pixels that is counted, 0…1.</param>
public sealed record FlickerReach(double StepNoise, double DwellSeconds, double Share);
