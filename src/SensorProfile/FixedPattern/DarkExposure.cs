using SensorProfile.Pixels;

namespace SensorProfile.FixedPattern;

/// <summary>Dark frames of one exposure at one temperature.</summary>
/// <param name="Seconds">Exposure, s.</param>
/// <param name="Frames">At least one frame.</param>
internal sealed record DarkExposure(double Seconds, IReadOnlyList<IFrameSamples> Frames);
