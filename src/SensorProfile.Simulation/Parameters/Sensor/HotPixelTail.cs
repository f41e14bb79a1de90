namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Shape of the distribution of hot-pixel rates.</summary>
public enum HotPixelTail
{
    /// <summary>Equal numbers per factor of rate.</summary>
    LogUniform,

    /// <summary>Numbers that fall exponentially with the rate.</summary>
    Exponential,
}
