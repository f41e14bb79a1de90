namespace SensorProfile.Reporting;

/// <summary>Pictures of the sensor for the report, where the maps still exist.</summary>
/// <param name="Pictures">In the order in which they are to appear.</param>
public sealed record ReportMaps(IReadOnlyList<MapPicture> Pictures);
