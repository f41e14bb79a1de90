using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames.Sets;

/// <summary>Frames that differ in nothing but temperature and time.</summary>
/// <param name="Kind">What they were taken for.</param>
/// <param name="Camera">Camera; null when no header of its size says.</param>
/// <param name="Settings">Gain, offset, ISO, binning, read-out.</param>
/// <param name="Width">px.</param>
/// <param name="Height">px.</param>
/// <param name="ColourFilter">Filter pattern in file order.</param>
/// <param name="Top">First row of the sensor.</param>
/// <param name="Left">First column of the sensor.</param>
/// <param name="Label">Label from the capture table.</param>
internal sealed record SeriesKey(
    FrameKind Kind,
    string? Camera,
    int Width,
    int Height,
    string? ColourFilter,
    ModeSettings Settings,
    int Top,
    int Left,
    string? Label
);
