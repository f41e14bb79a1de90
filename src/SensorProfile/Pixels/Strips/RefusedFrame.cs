using SensorProfile.Frames;

namespace SensorProfile.Pixels.Strips;

/// <summary>A frame that cannot be measured; the others go on without it.</summary>
/// <param name="Frame">The frame.</param>
/// <param name="Reason">Place in the file and what is wrong there, one plain sentence; the lists that show it name the
/// file.</param>
internal sealed record RefusedFrame(Frame Frame, string Reason);
