using SensorProfile.Frames;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>A set of lights or of darks that was judged.</summary>
/// <param name="Kind">Light or dark.</param>
/// <param name="Frames">How many.</param>
/// <param name="Exposure">s; null when unknown.</param>
/// <param name="Temperature">Temperature of the same mean dark current as the set, °C; null when unknown.</param>
/// <param name="Settings">Gain, offset, binning.</param>
/// <param name="Width">px.</param>
/// <param name="Height">px.</param>
/// <param name="Label">Name given to the set; null for none.</param>
public sealed record MatchedSet(
    FrameKind Kind,
    int Frames,
    double? Exposure,
    double? Temperature,
    ModeSettings Settings,
    int Width,
    int Height,
    string? Label
);
