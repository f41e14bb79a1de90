using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>The verdicts on darks for a light set, best first.</summary>
public static class MatchVerdict
{
    /// <summary>Every limit is kept.</summary>
    public const string Fits = "fits";

    /// <summary>A limit is exceeded, but the loss is stated and bearable.</summary>
    public const string Usable = "usable";

    /// <summary>Other settings or size, or a loss beyond what is usable.</summary>
    public const string DoesNotFit = "does-not-fit";

    /// <summary>A temperature, an exposure or the profile is missing, or the interval spans both sides.</summary>
    public const string CannotTell = Answer.CannotTell;

    internal static int Rank(string verdict) =>
        verdict switch
        {
            Fits => 0,
            Usable => 1,
            CannotTell => 2,
            _ => 3,
        };
}
