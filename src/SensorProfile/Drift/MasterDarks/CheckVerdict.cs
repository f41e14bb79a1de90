namespace SensorProfile.Drift.MasterDarks;

/// <summary>What to do with a master dark.</summary>
public enum CheckVerdict
{
    /// <summary>It still does.</summary>
    Keep,

    /// <summary>Fresh darks show a residual beyond what is accepted.</summary>
    Retake,

    /// <summary>The fresh darks are missing, or too few to say.</summary>
    CannotTell,
}
