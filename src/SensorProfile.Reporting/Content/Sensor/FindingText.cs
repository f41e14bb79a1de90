namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>The small print under a finding.</summary>
internal static class FindingText
{
    private const int FramesShown = 3;

    /// <summary>Its code, and the first of its frames.</summary>
    public static string Source(Finding finding)
    {
        if (finding.Frames.Count == 0)
            return finding.Code;
        string more =
            finding.Frames.Count > FramesShown
                ? $" and {QuantityText.Count(finding.Frames.Count - FramesShown)} more"
                : "";
        return $"{finding.Code} · {string.Join(", ", finding.Frames.Take(FramesShown))}{more}";
    }
}
