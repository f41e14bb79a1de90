namespace SensorProfile.Drift.OverTheYears;

/// <summary>Which of the two changed: the temperature probe or the dark current.</summary>
public enum ProbeVerdict
{
    /// <summary>Neither, beyond the errors.</summary>
    None,

    /// <summary>The probe alone.</summary>
    Probe,

    /// <summary>The dark current alone.</summary>
    Ageing,

    /// <summary>Both.</summary>
    Both,

    /// <summary>Something changed, and the evidence fits either.</summary>
    CannotTell,
}
