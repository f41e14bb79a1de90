namespace SensorProfile.Decisions.Setpoint;

/// <summary>One point of the curve behind a set point.</summary>
/// <param name="Temperature">°C.</param>
/// <param name="ExtraTypical">Noise added by dark current to the typical pixel, %.</param>
/// <param name="ExtraAtShare">The same for the pixel at the stated share, %; null without a distribution.</param>
/// <param name="Low">Lower end of the 95 % interval of <paramref name="ExtraTypical"/>, %.</param>
/// <param name="High">Upper end of that interval, %.</param>
/// <param name="Extrapolated">Whether the temperature lies outside the measured range.</param>
public sealed record SetpointPoint(
    double Temperature,
    double ExtraTypical,
    double? ExtraAtShare,
    double? Low,
    double? High,
    bool Extrapolated
);
