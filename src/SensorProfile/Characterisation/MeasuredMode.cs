using SensorProfile.Profiles;

namespace SensorProfile.Characterisation;

/// <summary>A mode with its frames, its part of the profile, and its maps.</summary>
internal sealed record MeasuredMode(ModeFrames Frames, ModeProfile Profile, ModeMaps Maps);
