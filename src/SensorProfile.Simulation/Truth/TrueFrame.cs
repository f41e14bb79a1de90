using System.Text.Json.Serialization;
using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters;

namespace SensorProfile.Simulation.Truth;

/// <summary>The truth about one frame, whatever its header states.</summary>
internal sealed record TrueFrame
{
    /// <summary>File name.</summary>
    public required string File { get; init; }

    /// <summary>Kind of frame.</summary>
    [JsonConverter(typeof(KebabEnumConverter<FrameKind>))]
    public required FrameKind Kind { get; init; }

    /// <summary>Exposure, s.</summary>
    public required double Exposure { get; init; }

    /// <summary>Reading of the probe, °C; null when missing.</summary>
    public required double? Temperature { get; init; }

    /// <summary>Temperature of the die, °C.</summary>
    public required double DieTemperature { get; init; }

    /// <summary>Start, UTC.</summary>
    public required DateTimeOffset StartUtc { get; init; }

    /// <summary>Mean photo-electrons in a pixel of full response, e-/px.</summary>
    public required double LightElectrons { get; init; }

    /// <summary>Stray light, mean over the frame, e-/px.</summary>
    public required double LeakElectrons { get; init; }

    /// <summary>
    /// Mean charge from earlier light released into a pixel of full response, e-/px; null when there is none.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? PersistenceElectrons { get; init; }

    /// <summary>Bias level of this frame minus the camera's, ADU.</summary>
    public required double PedestalOffset { get; init; }

    /// <summary>Row (1-based) from which on the frame has no exposure; null for a whole frame.</summary>
    public required int? TornFromRow { get; init; }

    /// <summary>Whether its file was altered (header or length).</summary>
    public required bool FileSpoilt { get; init; }
}
