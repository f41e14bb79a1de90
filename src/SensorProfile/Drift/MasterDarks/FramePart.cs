namespace SensorProfile.Drift.MasterDarks;

/// <summary>Where a part of a frame lies in the whole, counted in pixels of that frame.</summary>
/// <param name="Left">First column, from 0.</param>
/// <param name="Top">First row, from 0.</param>
/// <param name="WholeWidth">Columns of the whole frame.</param>
/// <param name="WholeHeight">Rows of the whole frame.</param>
/// <param name="Block">Pixels of the sensor that one pixel of the frame covers along each side.</param>
internal readonly record struct FramePart(int Left, int Top, int WholeWidth, int WholeHeight, int Block);
