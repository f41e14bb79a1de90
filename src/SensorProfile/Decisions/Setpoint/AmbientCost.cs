namespace SensorProfile.Decisions.Setpoint;

/// <summary>What one ambient temperature allows and costs.</summary>
/// <param name="Label">For example "July".</param>
/// <param name="Ambient">°C.</param>
/// <param name="Sensor">Temperature the sensor then runs at, °C.</param>
/// <param name="ExtraTypical">Noise added by dark current to the typical pixel, %.</param>
/// <param name="ExtraAtShare">The same for the pixel at the stated share, %; null without a distribution.</param>
/// <param name="WithinLoss">Whether both stay within the accepted loss.</param>
/// <param name="Extrapolated">Whether the temperature lies outside the measured range.</param>
internal sealed record AmbientCost(
    string Label,
    double Ambient,
    double Sensor,
    double ExtraTypical,
    double? ExtraAtShare,
    bool WithinLoss,
    bool Extrapolated
);
