namespace SensorProfile.Drift;

/// <summary>A quantity of one profile, ready to be compared.</summary>
/// <param name="Name">As in profile.json.</param>
/// <param name="Value">The value; what varies from night to night without any ageing is in its uncertainty.</param>
/// <param name="IsCount">Whether it is a count of pixels, compared by the exact test.</param>
internal sealed record Quantity(string Name, Measurement Value, bool IsCount = false);
