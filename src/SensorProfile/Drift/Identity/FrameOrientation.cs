namespace SensorProfile.Drift.Identity;

/// <summary>
/// What brings a frame back to the orientation of another; directions hold with the first row at the top.
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
