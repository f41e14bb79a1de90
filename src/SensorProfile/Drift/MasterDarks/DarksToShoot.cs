using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Darks to shoot.</summary>
/// <param name="Exposure">s; null when the master does not say.</param>
/// <param name="Temperature">°C; null when the master does not say.</param>
/// <param name="Frames">At least so many.</param>
/// <param name="Retake">Whether they replace a master; else they are to check one with.</param>
internal sealed record DarksToShoot(double? Exposure, double? Temperature, int Frames, bool Retake)
{
    /// <summary>The camera's settings; null when the master could not be read.</summary>
    internal ModeSettings? Settings { get; init; }
}
