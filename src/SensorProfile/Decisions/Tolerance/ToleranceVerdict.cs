namespace SensorProfile.Decisions.Tolerance;

/// <summary>Whether it is known how far darks may differ from lights.</summary>
public enum ToleranceVerdict
{
    /// <summary>The limit is known.</summary>
    Answered,

    /// <summary>
    /// The limit is known to no better than half of itself, or the distribution over pixels is not known.
    /// </summary>
    CannotTell,
}
