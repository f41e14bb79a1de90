namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Peculiarities of a pixel found in its darks, besides its rate.</summary>
[Flags]
internal enum PixelFlags : byte
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>At the top code in the longest exposure.</summary>
    Saturated = 1,

    /// <summary>Signal does not grow linearly with exposure.</summary>
    NonLinear = 2,

    /// <summary>Scatters from frame to frame by more than its signal explains.</summary>
    Noisy = 4,

    /// <summary>
    /// Scatters in several groups of frames by more than the stated factor; a single charged-particle hit is not
    /// enough.
    /// </summary>
    Flickering = 8,

    /// <summary>Jumps between two or more levels, by the level test.</summary>
    Levelled = 32,

    /// <summary>Stands out from the ordinary pixels; not a defect in itself.</summary>
    Outstanding = 16,
}
