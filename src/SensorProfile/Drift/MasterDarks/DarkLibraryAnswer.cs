using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>Is my dark library still good?</summary>
/// <remarks>
/// Quantities: lossWorst (%), the largest rise of a stack's noise caused by any of the masters.
/// </remarks>
public sealed record DarkLibraryAnswer : Answer
{
    /// <summary>The stack that the masters serve, and its limits.</summary>
    public required DarkLibraryOptions Stack { get; init; }

    /// <summary>Where the gain comes from.</summary>
    public required GainSource GainFrom { get; init; }

    /// <summary>The gain, e-/ADU; null when unknown.</summary>
    public Measurement? Gain { get; init; }

    /// <summary>The verdict on the library: the worst of its masters.</summary>
    public required CheckVerdict Library { get; init; }

    /// <summary>One entry per master, in the order given.</summary>
    public IReadOnlyList<MasterVerdict> Masters { get; init; } = [];

    /// <summary>
    /// The least that must be shot, one line per exposure and temperature; empty when nothing needs retaking.
    /// </summary>
    internal IReadOnlyList<DarksToShoot> Shoot { get; init; } = [];
}

/// <summary>Where the gain of a check comes from.</summary>
public enum GainSource
{
    /// <summary>The gain is unknown: residuals are in ADU, and the noise of the sky is not counted.</summary>
    Unknown,

    /// <summary>The profile of the camera.</summary>
    Profile,

    /// <summary>The shot noise of hot pixels in the fresh darks: good enough to count the sky.</summary>
    HotPixels,
}
