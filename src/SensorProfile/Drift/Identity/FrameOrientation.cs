namespace SensorProfile.Drift.Identity;

/// <summary>
/// What turns a frame to the orientation of another; directions assume that the first row is at the top.
/// </summary>
internal enum FrameOrientation
{
    AsIs,
    HalfTurn,
    MirrorColumns,
    MirrorRows,
    QuarterTurnClockwise,
    QuarterTurnAnticlockwise,
    Transpose,
    AntiTranspose,
}
