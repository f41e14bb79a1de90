namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>The levels that best fit the samples of a pixel.</summary>
internal sealed record TelegraphFit
{
    /// <summary>
    /// Natural logarithm of an upper limit on the probability that a pixel with one level, and normal noise up to a
    /// stated multiple of the camera noise, looks as clearly divided; 0 when the division alone proves nothing.
    /// </summary>
    public required double LogChance { get; init; }

    /// <summary>
    /// Number of equally spaced levels, 2 or 3 (a pixel that changes state between the two readings of correlated
    /// double sampling shows three).
    /// </summary>
    public required int Levels { get; init; }

    /// <summary>
    /// True when the step grows with exposure and temperature like dark signal; false when it is the same in every
    /// frame.
    /// </summary>
    public required bool Thermal { get; init; }

    /// <summary>
    /// Step from one level to the next: e-, or e-/px/s at the reference temperature when <see cref="Thermal"/>.
    /// </summary>
    public required double Step { get; init; }

    /// <summary>Standard uncertainty of the step.</summary>
    public required double StepUncertainty { get; init; }

    /// <summary>Largest step in one frame of the sets, e-.</summary>
    public required double LargestStep { get; init; }

    /// <summary>
    /// Mean level over the highest level, in the sets where both were seen; with two levels, the share of frames in the
    /// upper one.
    /// </summary>
    public required double UpperShare { get; init; }

    /// <summary>Changes of level between consecutive frames.</summary>
    public required int Switches { get; init; }

    /// <summary>How long the pixel stays in a level; null when the frames cannot tell.</summary>
    public DwellTimes? Dwell { get; init; }
}
