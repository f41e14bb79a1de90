namespace SensorProfile.Profiles.Darks;

/// <summary>Black level of one frame.</summary>
/// <param name="Hours">Time since the first frame, h; null when its time is unknown.</param>
/// <param name="Temperature">Sensor temperature as read, °C; null when unknown.</param>
/// <param name="Exposure">Exposure, s; 0 for a bias frame.</param>
/// <param name="Level">Median level without the dark signal, ADU.</param>
/// <param name="Uncertainty">Standard uncertainty from the pixels' noise and the uncertainty of the temperature,
/// ADU.</param>
/// <param name="Expected">Level expected from time, temperature and exposure, ADU.</param>
public sealed record BlackLevelPoint(
    double? Hours,
    double? Temperature,
    double Exposure,
    double Level,
    double Uncertainty,
    double Expected
);
