using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.DarkCount;

/// <summary>How many darks does this stack need?</summary>
public sealed record DarkCountQuestion
{
    /// <summary>Exposure of lights and darks, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>Sensor temperature, °C.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>Lights in the stack.</summary>
    public required int Lights { get; init; }

    /// <summary>Dither positions; 1 without dithering.</summary>
    public int DitherPositions { get; init; } = 1;

    /// <summary>The sky; null judges the strictest of the three named skies.</summary>
    public SkyRate? Sky { get; init; }

    /// <summary>Accepted rise of the noise, 0.05 = 5 %.</summary>
    public double Loss { get; init; } = 0.05;
}
