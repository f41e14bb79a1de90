namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>The levels that fit a pixel's samples best.</summary>
internal sealed record TelegraphFit
{
    /// <summary>
    /// Natural logarithm of the chance, at most, that a pixel of one level, with normal noise up to a stated multiple
    /// of the camera's, comes out as clearly divided; 0 when its form alone proves nothing.
    /// </summary>
    public required double LogChance { get; init; }

    /// <summary>
    /// Equally spaced levels, 2 or 3 (a pixel that changes state between the two readings of correlated double sampling
    /// shows three).
    /// </summary>
    public required int Levels { get; init; }

    /// <summary>
    /// True when the step grows with exposure and temperature as dark signal does, false when it is the same in every
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
    /// Mean level over the highest: with two levels the share of frames in the upper one, over the sets in which both
    /// were seen.
    /// </summary>
    public required double UpperShare { get; init; }

    /// <summary>Changes of level between consecutive frames.</summary>
    public required int Switches { get; init; }

    /// <summary>How long it stays in a level; null when the frames cannot tell.</summary>
    public DwellTimes? Dwell { get; init; }
}
