using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>How cold should I run the camera, or, without a cooler, what does the weather cost me?</summary>
public sealed record SetpointQuestion
{
    /// <summary>Exposure of one light, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>The sky; null answers for three named skies side by side.</summary>
    public SkyRate? Sky { get; init; }

    /// <summary>Accepted rise of the noise by dark current, 0.05 = 5 %.</summary>
    public double Loss { get; init; } = 0.05;

    /// <summary>Share of the pixels that must stay within the loss.</summary>
    public double Share { get; init; } = 0.99;

    /// <summary>
    /// Ambient temperatures at which to hold the set point, one or a year of them; empty when not known.
    /// </summary>
    public IReadOnlyList<AmbientTemperature> Ambient { get; init; } = [];

    /// <summary>
    /// Largest difference to the ambient temperature that the cooler reaches, °C; null when not known.
    /// </summary>
    public double? MaximumDifference { get; init; }

    /// <summary>Part of that difference kept in reserve, so that the cooler can still regulate in summer, °C.</summary>
    public double Margin { get; init; } = 3;

    /// <summary>False for a camera without a cooler: its sensor follows the ambient temperature.</summary>
    public bool Cooled { get; init; } = true;

    /// <summary>How much warmer than the air an uncooled sensor runs, °C.</summary>
    public double SelfHeating { get; init; }

    /// <summary>
    /// Coldest temperature that the cooler can hold in this air with its reserve kept, °C, whole degrees and no warmer
    /// than the air; null when its reach is not known.
    /// </summary>
    internal double? ColdestHeld(double air) =>
        MaximumDifference is double difference ? Math.Min(Math.Ceiling(air - difference + Margin - 1e-9), air) : null;
}
