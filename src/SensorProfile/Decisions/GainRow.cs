using SensorProfile.Profiles;

namespace SensorProfile.Decisions;

/// <summary>One measured mode in the choice of the gain setting.</summary>
/// <param name="Settings">The settings.</param>
/// <param name="ReadNoise">e-.</param>
/// <param name="Gain">e-/ADU.</param>
/// <param name="FullWell">e-; null when not measured.</param>
/// <param name="ExposureNeeded">Exposure from which the sky drowns the read noise, s.</param>
/// <param name="Drowned">Whether the exposure asked for is long enough.</param>
public sealed record GainRow(ModeSettings Settings, Measurement ReadNoise, Measurement Gain, Measurement? FullWell, Measurement ExposureNeeded, bool Drowned);
