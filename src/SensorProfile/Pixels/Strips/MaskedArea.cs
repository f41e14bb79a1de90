using SensorProfile.Frames;
using SensorProfile.Raw;

namespace SensorProfile.Pixels.Strips;

/// <summary>A rectangle of masked pixels.</summary>
/// <param name="Top">First row, counted over all stored rows.</param>
/// <param name="Left">First column, counted over all stored columns.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="IsNamed">Whether the file names this area; otherwise it is what lies around the active area.</param>
internal sealed record MaskedArea(int Top, int Left, int Width, int Height, bool IsNamed)
{
    private const int MinLines = 8; // fewer give no row noise
    private const int MaxSamples = 4 << 20; // held in memory for two frames at once

    /// <summary>Number of pixels.</summary>
    public int Samples => Width * Height;

    /// <summary>The largest area outside the active area of a sensor; null when none is large enough.</summary>
    public static MaskedArea? Find(SensorArea sensor) =>
        sensor
            .Masked.Where(area => !Overlaps(area, sensor.Active))
            .Select(area => new MaskedArea(
                area.Top,
                area.Left,
                Math.Min(area.Width, MaxSamples / MinLines),
                Math.Min(area.Height, MaxSamples / Math.Max(1, Math.Min(area.Width, MaxSamples / MinLines))),
                sensor.MaskedIsNamed
            ))
            .Where(area => area is { Width: >= MinLines, Height: >= MinLines })
            .MaxBy(area => area.Samples);

    private static bool Overlaps(RawArea a, RawArea b) =>
        a.Top < b.Bottom && b.Top < a.Bottom && a.Left < b.Right && b.Left < a.Right;
}
