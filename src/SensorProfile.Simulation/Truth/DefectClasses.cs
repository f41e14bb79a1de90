namespace SensorProfile.Simulation.Truth;

/// <summary>True defects of a pixel; one pixel may have several.</summary>
[Flags]
internal enum DefectClasses
{
    /// <summary>Good.</summary>
    None = 0,

    /// <summary>Hot.</summary>
    Hot = 1,

    /// <summary>Random telegraph.</summary>
    Telegraph = 2,

    /// <summary>Hardly responds to light.</summary>
    Dead = 4,

    /// <summary>In a bad column.</summary>
    BadColumn = 8,

    /// <summary>In a bad row.</summary>
    BadRow = 16,

    /// <summary>Cold: little dark current.</summary>
    Cold = 32,

    /// <summary>In a group of touching hot pixels.</summary>
    Cluster = 64,
}
