namespace SensorProfile.Reporting;

/// <summary>The quantities of the decisions as people read them.</summary>
internal static class DecisionLabels
{
    private static readonly Dictionary<string, string> _known = new()
    {
        ["setpoint"] = "run at",
        ["setpointTypical"] = "warmest for the typical pixel",
        ["setpoint99"] = "warmest for 99 % of the pixels",
        ["diminishingReturns"] = "cooling below this gains less than 1 %",
        ["extraTypical"] = "noise added there, typical pixel",
        ["extra99"] = "noise added there, pixel at 99 %",
        ["toleranceWarmer"] = "darks warmer than the lights by at most",
        ["toleranceColder"] = "darks colder than the lights by at most",
        ["toleranceExposure"] = "exposure off by at most",
        ["totalFrames"] = "frames in all",
        ["totalTime"] = "total time",
        ["diskSpace"] = "disk space",
        ["darks"] = "darks needed",
        ["lossAt20"] = "cost of 20 darks",
        ["flats"] = "flats needed",
        ["flatLevel"] = "mean level of a flat, share of full well",
        ["flatLevelAdu"] = "the same, in your capture program",
        ["lossAt20Flats"] = "cost of 20 flats",
        ["lossByPattern"] = "cost of the flat-field residual",
        ["gradientLeft"] = "gradient left by flats, times the noise of the stack",
        ["shortestExposure"] = "shortest useful exposure",
        ["longestExposure"] = "exposure at which sky and dark current fill their share of the well",
    };

    /// <summary>The label of a name that scripts know, or null for one that is not a decision's.</summary>
    /// <param name="name">"toleranceWarmer".</param>
    public static string? Of(string name) => _known.GetValueOrDefault(name);
}
