using SensorProfile.Frames;

namespace SensorProfile.Screening;

/// <summary>A frame set and those of its frames that may be measured.</summary>
/// <param name="Set">The set as formed from the headers.</param>
/// <param name="Frames">Its good frames, ordered by time.</param>
internal sealed record ScreenedSet(FrameSet Set, IReadOnlyList<ScreenedFrame> Frames)
{
    /// <summary>Disjoint pairs of consecutive frames.</summary>
    public IReadOnlyList<(ScreenedFrame A, ScreenedFrame B)> Pairs() =>
        [.. Enumerable.Range(0, Frames.Count / 2).Select(i => (Frames[2 * i], Frames[2 * i + 1]))];
}
