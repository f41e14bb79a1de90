using SensorProfile.Frames;

namespace SensorProfile.Pixels.Strips;

/// <summary>A frame that cannot be measured; the work goes on without it.</summary>
/// <param name="Frame">The frame.</param>
/// <param name="Reason">What is wrong and where in the file, one plain sentence; the lists that show it name the
/// file.</param>
internal sealed record RefusedFrame(Frame Frame, string Reason);
