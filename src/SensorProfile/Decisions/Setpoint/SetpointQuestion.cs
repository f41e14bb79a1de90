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

    /// <summary>Ambient temperatures to hold the set point at, one or a year of them; empty when not known.</summary>
    public IReadOnlyList<AmbientTemperature> Ambient { get; init; } = [];

    /// <summary>Largest difference to the ambient that the cooler reaches, °C; null when not known.</summary>
    public double? MaximumDifference { get; init; }

    /// <summary>Part of that difference kept in reserve, so that the cooler can still regulate in summer, °C.</summary>
    public double Margin { get; init; } = 3;

    /// <summary>False for a camera without a cooler: its sensor follows the ambient.</summary>
    public bool Cooled { get; init; } = true;

    /// <summary>How much an uncooled sensor runs above the ambient, °C.</summary>
    public double SelfHeating { get; init; }

    /// <summary>
    /// Coldest temperature that the cooler holds in this air with its reserve kept, °C, whole degrees and no warmer
    /// than
    /// the air; null when its reach is not known.
    /// </summary>
    internal double? ColdestHeld(double air) =>
        MaximumDifference is double difference ? Math.Min(Math.Ceiling(air - difference + Margin - 1e-9), air) : null;
}
