namespace SensorProfile.Drift.Identity;

/// <summary>Whether two sessions are of one sensor.</summary>
internal enum SensorMatch
{
    Same,
    Another,
    CannotTell,
}
