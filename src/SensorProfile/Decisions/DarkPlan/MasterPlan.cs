using SensorProfile.NoiseModel.Answers;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>One master dark to shoot.</summary>
/// <param name="Exposure">s.</param>
/// <param name="Temperature">Sensor temperature, °C.</param>
/// <param name="Settings">Gain, offset, binning.</param>
/// <param name="Frames">Darks to take.</param>
/// <param name="ServesFrom">Coldest light it serves, °C.</param>
/// <param name="ServesTo">Warmest light it serves, °C.</param>
/// <param name="Reason">Which lights it serves, why so many.</param>
/// <param name="When">For an uncooled camera: when to shoot it; empty when cooled.</param>
/// <param name="Seconds">Clock time, s.</param>
/// <param name="Bytes">Disk space.</param>
public sealed record MasterPlan(
    double Exposure,
    double Temperature,
    ModeSettings Settings,
    int Frames,
    double ServesFrom,
    double ServesTo,
    string Reason,
    string When,
    double Seconds,
    double Bytes
)
{
    /// <summary>95 % interval of the number of darks, from the uncertainties of the profile and of the sky.</summary>
    public Interval FramesInterval { get; init; } = new(Frames, Frames);
}
