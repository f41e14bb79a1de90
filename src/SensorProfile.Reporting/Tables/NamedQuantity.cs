namespace SensorProfile.Reporting.Tables;

/// <summary>A quantity of a profile with its name for scripts and its name for people.</summary>
/// <param name="Key">Name as in profile.json.</param>
/// <param name="Label">Name in words.</param>
/// <param name="Quantity">The quantity; null when it was not measured.</param>
internal sealed record NamedQuantity(string Key, string Label, Measurement? Quantity);
