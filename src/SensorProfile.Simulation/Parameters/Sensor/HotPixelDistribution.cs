using System.Text.Json.Serialization;

namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Distribution of the excess rates of hot pixels at the reference temperature.</summary>
public sealed record HotPixelDistribution
{
    /// <summary>
    /// log-uniform between <see cref="Minimum"/> and <see cref="Maximum"/>, or an exponential tail above
    /// <see cref="Minimum"/>. Default log-uniform.
    /// </summary>
    [JsonConverter(typeof(KebabEnumConverter<HotPixelTail>))]
    public HotPixelTail Kind { get; init; }

    /// <summary>Smallest excess, e-/px/s. Default 0.1.</summary>
    public double Minimum { get; init; } = 0.1;

    /// <summary>Largest excess (larger draws from the exponential tail are set to it), e-/px/s. Default 10.</summary>
    public double Maximum { get; init; } = 10;

    /// <summary>Mean excess above the minimum in the exponential tail, e-/px/s. Default 1.</summary>
    public double Scale { get; init; } = 1;
}
