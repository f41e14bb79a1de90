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
/// <param name="Seconds">Clock time, s.</param>
/// <param name="Bytes">Disk space.</param>
public sealed record MasterPlan(
    double Exposure,
    double Temperature,
    ModeSettings Settings,
    int Frames,
    double ServesFrom,
    double ServesTo,
    double Seconds,
    double Bytes
)
{
    /// <summary>Approximate number of lights that it serves.</summary>
    internal double Lights { get; init; }

    /// <summary>Whether the noise alone would allow fewer darks than it takes to recognise a cosmic-ray hit.</summary>
    internal bool FewestForHits { get; init; }

    /// <summary>Share of the mismatch limits used by the light that it serves worst; 1 is the limit.</summary>
    internal double MismatchUse { get; init; }

    /// <summary>For an uncooled camera: when to shoot it; null when cooled.</summary>
    internal MasterTime? When { get; init; }

    /// <summary>95 % interval of the number of darks, from the uncertainties of the profile and of the sky.</summary>
    public Interval FramesInterval { get; init; } = new(Frames, Frames);
}
