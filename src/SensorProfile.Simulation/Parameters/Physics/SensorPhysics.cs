using System.Text.Json.Serialization;

namespace SensorProfile.Simulation.Parameters.Physics;

/// <summary>
/// The sensor's own physics in physical parameters (energies, traps, times) rather than those of a fit.
/// </summary>
/// <remarks>Adds to the effects in the rest of the description; without it nothing changes.</remarks>
public sealed record SensorPhysics
{
    /// <summary>Populations of defects that generate dark current, each defect with its own energy.</summary>
    public IReadOnlyList<DefectPopulation> Defects { get; init; } = [];

    /// <summary>Traps that switch between two states.</summary>
    public IReadOnlyList<SwitchingTraps> SwitchingTraps { get; init; } = [];

    /// <summary>Persistence, charge that light leaves for later frames; null (default) for none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Persistence? Persistence { get; init; }

    /// <summary>
    /// How much warmer the last column is than the first, °C; the temperature of the die applies at the centre. Default
    /// 0.
    /// </summary>
    public double GradientAcross { get; init; }

    /// <summary>How much warmer the last row of the file is than the first, °C. Default 0.</summary>
    public double GradientDown { get; init; }

    /// <summary>
    /// Stray light in every frame, including flats and bias frames: mean over the frame, strongest at the last corner,
    /// e-/px/s. Default 0.
    /// </summary>
    public double LightLeak { get; init; }
}
