namespace SensorProfile.Decisions.Tolerance;

/// <summary>What limits darks first.</summary>
internal enum BindingCause
{
    /// <summary>Spread of the residual over pixels that are not hot.</summary>
    Typical,

    /// <summary>Share of pixels with a visible residual.</summary>
    HotPixels,

    /// <summary>Residual of the glow at its peak.</summary>
    Glow,

    /// <summary>Gradient that the level residual leaves after the flat.</summary>
    Level,

    /// <summary>The noise of a master of too few frames; not a mismatch.</summary>
    NumberOfDarks,
}
