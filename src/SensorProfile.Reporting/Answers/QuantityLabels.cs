namespace SensorProfile.Reporting.Answers;

/// <summary>Names of quantities as people read them.</summary>
internal static class QuantityLabels
{
    private static readonly Dictionary<string, string> Known = new()
    {
        ["darkRateChange"] = "change of the dark current",
        ["darkRatePerYear"] = "dark current per year",
        ["newHotPixelsPerYear"] = "new hot pixels",
        ["healedHotPixelsPerYear"] = "healed hot pixels",
        ["lossWorst"] = "largest rise in a stack's noise",
        ["level"] = "mean level of the computed dark",
        ["uncertaintyTypical"] = "uncertainty, ordinary pixel",
        ["uncertaintyHot"] = "uncertainty, hot pixel",
        ["equivalentFrames"] = "equivalent master of real darks",
        ["coverageTypical"] = "ordinary pixels within their 95 % interval",
        ["coverageHot"] = "hot pixels within their 95 % interval",
        ["coverageGlow"] = "pixels in the glow within their 95 % interval",
        ["coverageFlickering"] = "flickering pixels within their 95 % interval",
        ["coverageAgainst"] = "fresh darks within their 95 % interval",
    };

    /// <summary>The known label of "toleranceWarmer", or else its name as words: "tolerance warmer".</summary>
    public static string Of(string name) =>
        DecisionLabels.Of(name)
        ?? (
            Known.TryGetValue(name, out string? label)
                ? label
                : string.Concat(name.Select(c => char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString()))
        );
}
