using SensorProfile.Profiles;

namespace SensorProfile.Characterisation.Maps;

/// <summary>What came out of a session's frames.</summary>
/// <param name="Profile">The camera profile.</param>
/// <param name="Maps">Per-pixel maps, one entry per mode of the profile and in its order.</param>
public sealed record CharacterisationResult(CameraProfile Profile, IReadOnlyList<ModeMaps> Maps);
