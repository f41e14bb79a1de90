using System.Text.Json.Serialization;
using SensorProfile.Frames;

namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>A series of frames taken under the same conditions.</summary>
public sealed record Shot
{
    /// <summary>Kind of frame: bias, dark, flat, dark-flat or light.</summary>
    [JsonConverter(typeof(KebabEnumConverter<FrameKind>))]
    public required FrameKind Kind { get; init; }

    /// <summary>Exposure, s. Default 0.</summary>
    public double Exposure { get; init; }

    /// <summary>
    /// Set temperature of the cooler, or ambient temperature of an uncooled camera, °C; null for the reference
    /// temperature.
    /// </summary>
    public double? Temperature { get; init; }

    /// <summary>Number of frames. Default 1.</summary>
    public int Count { get; init; } = 1;

    /// <summary>
    /// Flats and lights: mean photo-electrons per frame in a pixel of full response, e-/px. Default 0.
    /// </summary>
    public double Level { get; init; }

    /// <summary>Stray light, mean over the frame, strongest at one corner, e-/px/s; also in darks. Default 0.</summary>
    public double LightLeak { get; init; }

    /// <summary>
    /// Reading of the probe minus temperature of the die in this shot, °C, in addition to the thermometer's own offset.
    /// Default 0.
    /// </summary>
    public double ProbeOffset { get; init; }

    /// <summary>
    /// Pause before the first frame, s; null for the usual minute plus the time to reach the temperature.
    /// </summary>
    public double? Pause { get; init; }
}
