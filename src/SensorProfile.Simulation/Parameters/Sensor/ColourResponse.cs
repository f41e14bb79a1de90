namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Transmission of each colour of the filter array, relative to the light of the shot.</summary>
public sealed record ColourResponse
{
    /// <summary>Red. Default 1.</summary>
    public double Red { get; init; } = 1;

    /// <summary>Green. Default 1.</summary>
    public double Green { get; init; } = 1;

    /// <summary>Blue. Default 1.</summary>
    public double Blue { get; init; } = 1;
}
