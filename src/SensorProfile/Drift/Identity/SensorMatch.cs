namespace SensorProfile.Drift.Identity;

/// <summary>Whether two sessions are of the same sensor.</summary>
internal enum SensorMatch
{
    Same,
    Another,
    CannotTell,
}
