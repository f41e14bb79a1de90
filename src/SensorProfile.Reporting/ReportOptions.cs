namespace SensorProfile.Reporting;

/// <summary>What a report may contain beyond the profile.</summary>
public sealed record ReportOptions
{
    /// <summary>Pictures of the sensor; null when the maps are not at hand.</summary>
    public ReportMaps? Maps { get; init; }
}
