namespace SensorProfile.Drift.MasterDarks;

/// <summary>Where a part lies in the whole frame, in pixels of that frame.</summary>
/// <param name="Left">First column, from 0.</param>
/// <param name="Top">First row, from 0.</param>
/// <param name="WholeWidth">Columns of the whole frame.</param>
/// <param name="WholeHeight">Rows of the whole frame.</param>
/// <param name="Block">Side of the square of sensor pixels that one pixel of the frame covers.</param>
internal readonly record struct FramePart(int Left, int Top, int WholeWidth, int WholeHeight, int Block);
