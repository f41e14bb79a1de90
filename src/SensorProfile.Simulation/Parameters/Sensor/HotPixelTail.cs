namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Shape of the distribution of hot-pixel rates.</summary>
public enum HotPixelTail
{
    /// <summary>Log-uniform: equal numbers per factor of rate.</summary>
    LogUniform,

    /// <summary>Exponential: numbers fall exponentially with the rate.</summary>
    Exponential,
}
