using SensorProfile.NoiseModel;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>What the age of a dark library says by itself: never more than "check it".</summary>
public static class LibraryAge
{
    private const double YearInDays = 365;

    /// <summary>
    /// Verdict by age alone: "recent" or "check"; only a measured residual or a significant change may reject a
    /// library.
    /// </summary>
    /// <param name="age">Time since the darks were taken; null when unknown.</param>
    public static string Verdict(TimeSpan? age) =>
        age is { } known && known.TotalDays <= YearInDays ? "recent" : "check";

    /// <summary>The rule of thumb and what to do about it, one line.</summary>
    /// <param name="age">Time since the darks were taken; null when unknown.</param>
    public static string Sentence(TimeSpan? age)
    {
        const string Rule = "\"Renew the dark library every year\" (common practice, no source)";
        if (age is null)
            return $"{Rule}: the age of these darks is not known; check them against a few new darks.";
        string days = $"these darks are {Said.Whole((long)age.Value.TotalDays)} days old";
        return Verdict(age) == "recent"
            ? $"{Rule}: {days}; age alone gives no reason to check them."
            : $"{Rule}: {days}; check them against a few new darks, age alone is no reason to throw them away.";
    }
}
