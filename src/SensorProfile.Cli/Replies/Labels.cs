namespace SensorProfile.Cli.Replies;

/// <summary>Names of quantities as people read them.</summary>
internal static class Labels
{
    private static readonly Dictionary<string, string> Known = new()
    {
        ["setpoint"] = "run at",
        ["setpointTypical"] = "warmest for the typical pixel",
        ["setpoint99"] = "warmest for 99 % of the pixels",
        ["diminishingReturns"] = "colder than this gains less than 1 %",
        ["extraTypical"] = "noise added there, typical pixel",
        ["extra99"] = "noise added there, pixel at 99 %",
        ["toleranceWarmer"] = "darks warmer than the lights by at most",
        ["toleranceColder"] = "darks colder than the lights by at most",
        ["darkRateChange"] = "change of the dark current",
        ["darkRatePerYear"] = "dark current per year",
        ["newHotPixelsPerYear"] = "new hot pixels",
        ["healedHotPixelsPerYear"] = "healed hot pixels",
        ["lossWorst"] = "largest rise of a stack's noise by one of them",
        ["toleranceExposure"] = "exposure different by at most",
    };

    /// <summary>"toleranceWarmer" becomes the label that is known for it, else its words: "tolerance warmer".</summary>
    public static string Of(string name) =>
        Known.TryGetValue(name, out string? label) ? label : string.Concat(name.Select(c => char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString()));
}
