namespace SensorProfile.Drift.MasterDarks;

/// <summary>What to do with a master dark.</summary>
public enum CheckVerdict
{
    /// <summary>It is still good.</summary>
    Keep,

    /// <summary>Fresh darks show a residual beyond the accepted limit.</summary>
    Retake,

    /// <summary>Fresh darks are missing, or too few to tell.</summary>
    CannotTell,
}
