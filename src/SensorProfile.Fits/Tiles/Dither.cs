namespace SensorProfile.Fits.Tiles;

/// <summary>How floats were quantised to integers (ZQUANTIZ).</summary>
internal enum Dither
{
    /// <summary>NO_DITHER.</summary>
    None,

    /// <summary>SUBTRACTIVE_DITHER_1.</summary>
    Subtractive,

    /// <summary>SUBTRACTIVE_DITHER_2: the same, but exact zeros stay zero.</summary>
    SubtractiveKeepsZero,
}
