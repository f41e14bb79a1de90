using SensorProfile.Frames;

namespace SensorProfile.Screening;

/// <summary>A frame set with the frames that may be measured.</summary>
/// <param name="Set">The set as the headers form it.</param>
/// <param name="Frames">Its good frames, in order of time.</param>
internal sealed record ScreenedSet(FrameSet Set, IReadOnlyList<ScreenedFrame> Frames)
{
    /// <summary>Disjoint pairs of frames that follow each other.</summary>
    public IReadOnlyList<(ScreenedFrame A, ScreenedFrame B)> Pairs() =>
        [.. Enumerable.Range(0, Frames.Count / 2).Select(i => (Frames[2 * i], Frames[2 * i + 1]))];
}
