using SensorProfile.Frames;

namespace SensorProfile.Pixels;

/// <summary>A frame that cannot be measured; the others go on without it.</summary>
/// <param name="Frame">The frame.</param>
/// <param name="Reason">One plain sentence that names the file.</param>
internal sealed record RefusedFrame(Frame Frame, string Reason);
