namespace SensorProfile.Decisions.DarkMatch;

/// <summary>The verdicts on darks for a light set, best first.</summary>
public enum MatchVerdict
{
    /// <summary>Every limit is kept.</summary>
    Fits,

    /// <summary>A limit is exceeded, but the loss is known and bearable.</summary>
    Usable,

    /// <summary>
    /// A temperature, an exposure or the profile is missing, or the interval spans both sides of the limit.
    /// </summary>
    CannotTell,

    /// <summary>Other settings or size, or a loss beyond what is usable.</summary>
    DoesNotFit,
}
