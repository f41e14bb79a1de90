using System.Text.Json.Serialization;

namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>One place where the electronics glow.</summary>
/// <remarks>
/// Signal at the peak after an exposure t: rate·t·(t/t_ref)^(p−1)·2^((T − T_ref)/ΔT₂), e-; or, in physical parameters,
/// rate·(t + w·(t − τ·(1 − exp(−t/τ))))·exp(−E/k·(1/T − 1/T_ref)).
/// </remarks>
public sealed record Glow
{
    /// <summary>Shape of the glow. Default right-edge.</summary>
    [JsonConverter(typeof(KebabEnumConverter<GlowShape>))]
    public GlowShape Shape { get; init; } = GlowShape.RightEdge;

    /// <summary>
    /// Rate at the peak, at the reference temperature and for the reference exposure, e-/px/s. Default 0.
    /// </summary>
    public double Rate { get; init; }

    /// <summary>Fall-off length, px (see <see cref="GlowShape"/>). Default 50.</summary>
    public double Width { get; init; } = 50;

    /// <summary>Column of the peak of a corner or blob, 1-based as FITS counts; null for the last column.</summary>
    public double? X { get; init; }

    /// <summary>
    /// Row of the peak of a corner or blob, 1-based; null for the last row. For the left and right edge: row of the
    /// peak along the edge; null for an even glow.
    /// </summary>
    public double? Y { get; init; }

    /// <summary>Spread along the edge about <see cref="Y"/> (Gaussian), px. Default 100; unused without Y.</summary>
    public double Length { get; init; } = 100;

    /// <summary>
    /// Temperature rise that doubles the glow, °C; null (default) when the glow does not depend on temperature.
    /// </summary>
    public double? DoublingTemperature { get; init; }

    /// <summary>Exponent p of glow ∝ exposure^p. Default 1: proportional.</summary>
    public double ExposureExponent { get; init; } = 1;

    /// <summary>Exposure at which the rate holds when p is not 1, s. Default 60.</summary>
    public double ReferenceExposure { get; init; } = 60;

    /// <summary>
    /// Activation energy of the glow, eV: exp(−E/k·(1/T − 1/T_ref)) instead of the doubling temperature; null (default)
    /// for none.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? ActivationEnergy { get; init; }

    /// <summary>
    /// Relative rise w of the glow as its source warms up: rate·(1 + w·(1 − exp(−t/τ))) at time t in an exposure,
    /// instead of the exponent; null (default) for none.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? WarmUp { get; init; }

    /// <summary>τ of <see cref="WarmUp"/>, s; null (default) for 100.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? WarmUpTime { get; init; }
}
