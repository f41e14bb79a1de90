using SensorProfile.Frames;

namespace SensorProfile.Decisions.Shots;

/// <summary>One line of a shot list.</summary>
/// <param name="Kind">Bias, dark or flat.</param>
/// <param name="Exposure">s; null where the light decides (flats) or the shortest one is meant (bias).</param>
/// <param name="Temperature">Sensor temperature, °C; null where it does not matter.</param>
/// <param name="LevelPercent">Level of a flat, % of saturation; null for frames without light.</param>
/// <param name="Frames">How many.</param>
/// <param name="Seconds">Clock time with read-out and settling, s.</param>
public sealed record PlannedShot(
    FrameKind Kind,
    double? Exposure,
    double? Temperature,
    double? LevelPercent,
    int Frames,
    double Seconds
)
{
    /// <summary>What it is for, and how to reach it.</summary>
    internal ShotPurpose Purpose { get; init; }
}
