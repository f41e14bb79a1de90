using System.Text.Json;

namespace SensorProfile.Drift.OverTheYears;

/// <summary>Is the sensor ageing?</summary>
public enum DriftVerdict
{
    /// <summary>Too little to compare.</summary>
    CannotTell,

    /// <summary>Something changed beyond the errors, the error of the temperature probe taken out.</summary>
    Changed,

    /// <summary>Nothing did; the temperature probe may have drifted.</summary>
    Unchanged,

    /// <summary>The profiles are of two sensors.</summary>
    AnotherSensor,
}

/// <summary>The words of a verdict for scripts.</summary>
internal static class DriftVerdictWord
{
    /// <summary>"another-sensor" …: the name in kebab case.</summary>
    public static string Of(DriftVerdict verdict) => JsonNamingPolicy.KebabCaseLower.ConvertName(verdict.ToString());
}
