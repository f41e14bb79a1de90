namespace SensorProfile.Decisions.Setpoint;

/// <summary>What one sensor temperature means over many nights.</summary>
/// <param name="Sensor">Sensor temperature, °C.</param>
/// <param name="Nights">Nights on which the cooler can keep the sensor no warmer; without a cooler, nights on which it
/// is no warmer.</param>
/// <param name="Share">The same as a share of all nights given, 0…1.</param>
/// <param name="ExtraTypical">Noise that dark current adds there to the typical pixel, %.</param>
/// <param name="ExtraAtShare">The same for the pixel at the stated share, %; null without a distribution.</param>
internal sealed record NightsAtTemperature(
    double Sensor,
    int Nights,
    double Share,
    double ExtraTypical,
    double? ExtraAtShare
);
