namespace SensorProfile.Drift.OverTheYears;

/// <summary>Is the sensor ageing?</summary>
public enum DriftVerdict
{
    /// <summary>Too little to compare.</summary>
    CannotTell,

    /// <summary>Something changed beyond the errors, even after correcting for the temperature probe.</summary>
    Changed,

    /// <summary>Nothing changed; the temperature probe may have drifted.</summary>
    Unchanged,

    /// <summary>The profiles are of two sensors.</summary>
    AnotherSensor,
}
