namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>What a single pixel's darks say against it, beside its rate.</summary>
[Flags]
internal enum PixelFlags : byte
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>At the top code in the longest exposure.</summary>
    Saturated = 1,

    /// <summary>Its signal does not grow in proportion to the exposure.</summary>
    NonLinear = 2,

    /// <summary>Scatters from frame to frame more than its signal explains.</summary>
    Noisy = 4,

    /// <summary>
    /// Scatters in several groups of frames by more than the stated factor: a single hit by a charged particle does not
    /// make it.
    /// </summary>
    Flickering = 8,

    /// <summary>Jumps between two or more levels: the level test.</summary>
    Levelled = 32,

    /// <summary>Stands out of the ordinary pixels: no defect in itself.</summary>
    Outstanding = 16,
}
