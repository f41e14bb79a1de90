using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames.Sets;

/// <summary>What frames share that differ only in temperature and time.</summary>
/// <param name="Kind">The kind of the frames.</param>
/// <param name="Camera">Camera; null when no header of this size states it.</param>
/// <param name="Settings">Gain, offset, ISO, binning and read-out mode.</param>
/// <param name="Width">Width, px.</param>
/// <param name="Height">Height, px.</param>
/// <param name="ColourFilter">Filter pattern in file order.</param>
/// <param name="Top">First row on the sensor.</param>
/// <param name="Left">First column on the sensor.</param>
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
