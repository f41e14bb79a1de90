using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Tolerance;

/// <summary>How far may my darks be from my lights?</summary>
public sealed record ToleranceQuestion
{
    /// <summary>Exposure of one light, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>
    /// Sensor temperature of the lights, °C; null takes the profile's reference temperature, with a finding.
    /// </summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Lights in the stack.</summary>
    public required int Lights { get; init; }

    /// <summary>Dither positions; 1 without dithering.</summary>
    public int DitherPositions { get; init; } = 1;

    /// <summary>Whether the stack rejects outliers.</summary>
    public bool RejectsOutliers { get; init; }

    /// <summary>The sky; null answers for three named skies side by side.</summary>
    public SkyRate? Sky { get; init; }

    /// <summary>Whether the darks are scaled to the lights by the law of the typical pixel.</summary>
    public bool Scaled { get; init; }

    /// <summary>The accepted losses.</summary>
    public LossLimits Limits { get; init; } = new();
}
