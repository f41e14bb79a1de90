namespace SensorProfile.Decisions.Tolerance;

/// <summary>Whether it can be said how far darks may be off.</summary>
public enum ToleranceVerdict
{
    /// <summary>The limit is known.</summary>
    Answered,

    /// <summary>The limit is known to no better than half of itself, or the spread over pixels is not known.</summary>
    CannotTell,
}
