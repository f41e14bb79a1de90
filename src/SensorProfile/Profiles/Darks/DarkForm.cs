namespace SensorProfile.Profiles.Darks;

/// <summary>From what the dark current was taken.</summary>
public enum DarkForm
{
    /// <summary>From the growth of the level with exposure.</summary>
    Level,

    /// <summary>From the growth of the variance, where the camera holds the level at its place.</summary>
    Variance,
}
