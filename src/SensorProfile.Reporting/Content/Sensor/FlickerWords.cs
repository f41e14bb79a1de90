using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Explains the count of flickering pixels.</summary>
internal static class FlickerWords
{
    /// <summary>What a flickering pixel is, and how many may be flagged by chance.</summary>
    public static string Meaning(DefectCounts counts, DefectThresholds? limits)
    {
        if (limits is null)
            return "between levels, or far noisier than the camera";
        string noisy = $"{QuantityText.Number(limits.NoiseFactor)} times as noisy as the camera";
        string least = counts.FlickeringAtLeast is { } all
            ? $"; at least {QuantityText.Count(all)} scatter more than noise explains, including those whose levels cannot be "
                + "told apart (noise budgets include them; tables/flicker-reach.csv says which steps the frames can show)"
            : "";
        return counts.Telegraph is not { } telegraph
            ? $"between levels, or {noisy}"
            : $"{QuantityText.Count(telegraph)} jump between two or three levels, frame by frame (at most "
                + $"{QuantityText.Number(limits.FlickerFalseAlarms)} per million pixels are flagged by chance), "
                + $"the others are {noisy}; tables/defects.csv has their steps and times{least}";
    }
}
