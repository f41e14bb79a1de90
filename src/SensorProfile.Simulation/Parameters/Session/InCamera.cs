namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>In-camera processing of the codes before they are stored.</summary>
public sealed record InCamera
{
    /// <summary>
    /// Factor on the codes of red pixels after conversion, rounded: leaves gaps in the histogram. Default 1.
    /// </summary>
    public double ScaleRed { get; init; } = 1;

    /// <summary>Factor on the codes of green pixels. Default 1.</summary>
    public double ScaleGreen { get; init; } = 1;

    /// <summary>Factor on the codes of blue pixels. Default 1.</summary>
    public double ScaleBlue { get; init; } = 1;

    /// <summary>Smoothing: weight of the mean of the four nearest pixels of the same colour, 0…1. Default 0.</summary>
    public double Smoothing { get; init; }

    /// <summary>
    /// Suppression of hot pixels: a pixel that exceeds the largest of its eight neighbours of the same colour by more
    /// than this is set to that neighbour, ADU; null (default) for none.
    /// </summary>
    public double? HotPixelThreshold { get; init; }
}
