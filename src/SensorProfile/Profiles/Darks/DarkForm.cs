namespace SensorProfile.Profiles.Darks;

/// <summary>What the dark current was derived from.</summary>
public enum DarkForm
{
    /// <summary>The growth of the level with exposure.</summary>
    Level,

    /// <summary>The growth of the variance, where the camera pins its level.</summary>
    Variance,
}
