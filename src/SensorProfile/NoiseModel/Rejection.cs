namespace SensorProfile.NoiseModel;

/// <summary>How a stack treats samples that stand out.</summary>
public enum Rejection
{
    /// <summary>The plain mean.</summary>
    None,

    /// <summary>Samples beyond 3·1.4826·MAD of their median are left out, once; the rest is averaged.</summary>
    SigmaClip,

    /// <summary>Such samples are set to that limit, and all are averaged.</summary>
    Winsorised,

    /// <summary>The median of the samples.</summary>
    Median,
}
