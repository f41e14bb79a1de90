namespace SensorProfile.Reporting.Answers;

/// <summary>Names of quantities as people read them.</summary>
internal static class QuantityLabels
{
    private static readonly Dictionary<string, string> Known = new()
    {
        [QuantityNames.DarkRateChange] = "change of the dark current",
        [QuantityNames.DarkRatePerYear] = "dark current per year",
        [QuantityNames.NewHotPixelsPerYear] = "new hot pixels",
        [QuantityNames.HealedHotPixelsPerYear] = "healed hot pixels",
        [QuantityNames.LossWorst] = "largest rise in a stack's noise",
        [QuantityNames.Level] = "mean level of the computed dark",
        [QuantityNames.UncertaintyTypical] = "uncertainty, ordinary pixel",
        [QuantityNames.UncertaintyHot] = "uncertainty, hot pixel",
        [QuantityNames.EquivalentFrames] = "equivalent master of real darks",
        [QuantityNames.CoverageTypical] = "ordinary pixels within their 95 % interval",
        [QuantityNames.CoverageHot] = "hot pixels within their 95 % interval",
        [QuantityNames.CoverageGlow] = "pixels in the glow within their 95 % interval",
        [QuantityNames.CoverageFlickering] = "flickering pixels within their 95 % interval",
        [QuantityNames.CoverageAgainst] = "fresh darks within their 95 % interval",
    };

    /// <summary>The known label of "toleranceWarmer", or else its name as words: "tolerance warmer".</summary>
    public static string Find(string name) =>
        DecisionLabels.Of(name)
        ?? (
            Known.TryGetValue(name, out string? label)
                ? label
                : string.Concat(name.Select(c => char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString()))
        );
}
