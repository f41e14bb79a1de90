namespace SensorProfile.Reporting;

/// <summary>What a report may contain beyond the profile.</summary>
public sealed record ReportOptions
{
    /// <summary>Pictures of the sensor; null when there are no maps.</summary>
    public ReportMaps? Maps { get; init; }

    /// <summary>
    /// Scale over which residuals of glow and level are judged as smooth, px, for the answers in the report; null judges them
    /// against the noise of one pixel.
    /// </summary>
    public double? SmoothPixels { get; init; }
}
