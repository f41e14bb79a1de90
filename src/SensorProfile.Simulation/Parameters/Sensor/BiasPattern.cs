namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Fixed pattern of the bias level, the same in every frame.</summary>
public sealed record BiasPattern
{
    /// <summary>Standard deviation from column to column, ADU. Default 0.</summary>
    public double Column { get; init; }

    /// <summary>Standard deviation from row to row, ADU. Default 0.</summary>
    public double Row { get; init; }

    /// <summary>Standard deviation from pixel to pixel, ADU. Default 0.</summary>
    public double Pixel { get; init; }
}
