namespace SensorProfile.Drift.OverTheYears;

/// <summary>A quantity at one date.</summary>
/// <param name="DateUtc">The date.</param>
/// <param name="Value">The value; its uncertainty includes the night-to-night variation.</param>
public sealed record TrendPoint(DateTimeOffset DateUtc, Measurement Value);
