namespace SensorProfile.Drift.OverTheYears;

/// <summary>A quantity at one date.</summary>
/// <param name="DateUtc">When.</param>
/// <param name="Value">The value; what varies from night to night is in its uncertainty.</param>
public sealed record TrendPoint(DateTimeOffset DateUtc, Measurement Value);
