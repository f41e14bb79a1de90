using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.Exposure;

/// <summary>Which gain setting, and how long a light?</summary>
public sealed record ExposureQuestion
{
    /// <summary>
    /// Exposure that the user has in mind, s; null asks for the shortest one that is long enough, with 300 s as the
    /// longest that anyone likes to lose.
    /// </summary>
    public double? ExposureSeconds { get; init; }

    /// <summary>The sky; null answers for three named skies side by side.</summary>
    public SkyRate? Sky { get; init; }

    /// <summary>Sensor temperature of the lights, °C; null takes the profile's reference temperature.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Accepted rise of the noise by read noise, 0.05 = 5 %.</summary>
    public double Loss { get; init; } = 0.05;

    /// <summary>Part of the full well that sky and dark current may fill; the rest is for stars.</summary>
    public double Fill { get; init; } = 0.5;

    /// <summary>Settings to which the answer is restricted; null compares all modes.</summary>
    public ModeSettings? Settings { get; init; }
}
