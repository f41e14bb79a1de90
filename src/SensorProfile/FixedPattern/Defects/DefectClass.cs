namespace SensorProfile.FixedPattern.Defects;

/// <summary>Defects of a pixel; one pixel may have several. The numbers are stored in defects.fits.</summary>
[Flags]
internal enum DefectClass : byte
{
    /// <summary>Sound.</summary>
    None = 0,

    /// <summary>Rate between the warm and the hot threshold.</summary>
    Warm = 1,

    /// <summary>Rate above the hot threshold.</summary>
    Hot = 2,

    /// <summary>Dark signal or response far below the neighbours.</summary>
    Cold = 4,

    /// <summary>No response to light.</summary>
    Dead = 8,

    /// <summary>At the top code in a dark.</summary>
    Saturated = 16,

    /// <summary>Signal not linear in the exposure.</summary>
    NonLinear = 32,

    /// <summary>Flickering between levels, or far noisier than the camera.</summary>
    Flickering = 64,

    /// <summary>In a column or row that stands out.</summary>
    Line = 128,
}
