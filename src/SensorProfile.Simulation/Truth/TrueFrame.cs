using System.Text.Json.Serialization;
using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters;

namespace SensorProfile.Simulation.Truth;

/// <summary>What is true of one frame, whatever its header says.</summary>
internal sealed record TrueFrame
{
    /// <summary>File name.</summary>
    public required string File { get; init; }

    /// <summary>What it was taken for.</summary>
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
    /// Charge of earlier light released into a pixel of full response, mean, e-/px; null where there is none.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? PersistenceElectrons { get; init; }

    /// <summary>Bias level of this frame minus the camera's, ADU.</summary>
    public required double PedestalOffset { get; init; }

    /// <summary>Row (1-based) from which on the frame carries no exposure; null when it is whole.</summary>
    public required int? TornFromRow { get; init; }

    /// <summary>Whether something was done to its file (header or length).</summary>
    public required bool FileSpoilt { get; init; }
}
