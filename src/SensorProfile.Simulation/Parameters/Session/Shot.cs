using System.Text.Json.Serialization;
using SensorProfile.Frames;

namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>A run of frames taken one after the other under the same conditions.</summary>
public sealed record Shot
{
    /// <summary>bias, dark, flat, dark-flat or light.</summary>
    [JsonConverter(typeof(KebabEnumConverter<FrameKind>))]
    public required FrameKind Kind { get; init; }

    /// <summary>Exposure, s. Default 0.</summary>
    public double Exposure { get; init; }

    /// <summary>
    /// Temperature that is asked of the cooler, or the ambient one of an uncooled camera, °C; null for the reference
    /// temperature.
    /// </summary>
    public double? Temperature { get; init; }

    /// <summary>Number of frames. Default 1.</summary>
    public int Count { get; init; } = 1;

    /// <summary>
    /// Flats and lights: mean photo-electrons that one frame collects in a pixel of full response, e-/px. Default 0.
    /// </summary>
    public double Level { get; init; }

    /// <summary>Stray light, mean over the frame, strongest at one corner, e-/px/s; also on darks. Default 0.</summary>
    public double LightLeak { get; init; }

    /// <summary>
    /// Reading of the probe minus temperature of the die in this shot, °C, beyond the thermometer's own. Default 0.
    /// </summary>
    public double ProbeOffset { get; init; }

    /// <summary>
    /// Pause before the first frame, s; null for the usual minute plus the time the temperature takes.
    /// </summary>
    public double? Pause { get; init; }
}
