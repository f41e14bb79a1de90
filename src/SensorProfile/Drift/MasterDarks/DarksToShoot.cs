using SensorProfile.Profiles.Session;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Darks that need to be shot.</summary>
/// <param name="Exposure">Exposure, s; null when the master does not state it.</param>
/// <param name="Temperature">Temperature, °C; null when the master does not state it.</param>
/// <param name="Frames">Minimum number of frames.</param>
/// <param name="Retake">Whether they replace a master; otherwise they only check one.</param>
internal sealed record DarksToShoot(double? Exposure, double? Temperature, int Frames, bool Retake)
{
    /// <summary>The camera's settings; null when the master could not be read.</summary>
    internal ModeSettings? Settings { get; init; }
}
