using SensorProfile.Characterisation.Maps;
using SensorProfile.Profiles;
using SensorProfile.Screening;

namespace SensorProfile.Characterisation.Summaries;

/// <summary>A mode with its frames, its part of the profile, and its maps.</summary>
internal sealed record MeasuredMode(ModeFrames Frames, ModeProfile Profile, ModeMaps Maps);
