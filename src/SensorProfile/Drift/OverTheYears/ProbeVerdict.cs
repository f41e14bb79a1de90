namespace SensorProfile.Drift.OverTheYears;

/// <summary>Which of the two changed: the temperature probe or the dark current.</summary>
internal enum ProbeVerdict
{
    /// <summary>Neither, within the errors.</summary>
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

/// <summary>Why hot pixels cannot tell a drifted probe from ageing.</summary>
internal enum ProbeGap
{
    /// <summary>One of the profiles, or both, has no maps.</summary>
    NoMaps,

    /// <summary>Too few hot pixels were measured well in both profiles.</summary>
    FewHotPixels,
}
