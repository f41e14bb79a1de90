namespace SensorProfile.Reporting;

/// <summary>The quantities of the decisions as people read them.</summary>
internal static class DecisionLabels
{
    private static readonly Dictionary<string, string> _known = new()
    {
        [QuantityNames.Setpoint] = "run at",
        [QuantityNames.SetpointTypical] = "warmest for the typical pixel",
        [QuantityNames.Setpoint99] = "warmest for 99 % of the pixels",
        [QuantityNames.DiminishingReturns] = "cooling below this gains less than 1 %",
        [QuantityNames.ExtraTypical] = "noise added there, typical pixel",
        [QuantityNames.Extra99] = "noise added there, pixel at 99 %",
        [QuantityNames.ToleranceWarmer] = "darks warmer than the lights by at most",
        [QuantityNames.ToleranceColder] = "darks colder than the lights by at most",
        [QuantityNames.ToleranceExposure] = "exposure off by at most",
        [QuantityNames.TotalFrames] = "frames in all",
        [QuantityNames.TotalTime] = "total time",
        [QuantityNames.DiskSpace] = "disk space",
        [QuantityNames.Darks] = "darks needed",
        [QuantityNames.LossAt20] = "cost of 20 darks",
        [QuantityNames.Flats] = "flats needed",
        [QuantityNames.FlatLevel] = "mean level of a flat, share of full well",
        [QuantityNames.FlatLevelAdu] = "the same, in your capture program",
        [QuantityNames.LossAt20Flats] = "cost of 20 flats",
        [QuantityNames.LossByPattern] = "cost of the flat-field residual",
        [QuantityNames.GradientLeft] = "gradient left by flats, times the noise of the stack",
        [QuantityNames.ShortestExposure] = "shortest useful exposure",
        [QuantityNames.LongestExposure] = "exposure at which sky and dark current fill their share of the well",
    };

    /// <summary>The label of a name that scripts know, or null for one that is not a decision's.</summary>
    /// <param name="name">"toleranceWarmer".</param>
    public static string? Of(string name) => _known.GetValueOrDefault(name);
}
