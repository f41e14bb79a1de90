using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.FlatPlan;

/// <summary>The number of flats and their level.</summary>
/// <remarks>
/// Quantities: flats, flatLevel (% of the full well), flatLevelAdu, lossAt20Flats and lossByPattern (%), gradientLeft
/// (what flats leave over areas, in the noise of a pixel of the stack; null where it was not measured).
/// </remarks>
public sealed record FlatPlanAnswer : Answer
{
    /// <summary>Whether flats can stay within the accepted loss.</summary>
    public required FlatPlanVerdict Verdict { get; init; }

    /// <summary>The lights it holds for.</summary>
    public required StackConditions Stack { get; init; }

    /// <summary>The sky it holds for.</summary>
    public required SkyRate Sky { get; init; }

    /// <summary>The accepted losses.</summary>
    public required LossLimits Limits { get; init; }

    /// <summary>
    /// The number of flats to take; where none stays within the loss, the number whose own noise alone does.
    /// </summary>
    public required int Flats { get; init; }

    /// <summary>Their level.</summary>
    public required FlatLevel Level { get; init; }

    /// <summary>What sets the level.</summary>
    internal FlatLevelLimit LevelLimit { get; init; }

    /// <summary>Every level considered, faintest first.</summary>
    internal IReadOnlyList<FlatLevel> Levels { get; init; } = [];

    /// <summary>Whether the noise alone would allow fewer flats than it takes to recognise a cosmic-ray hit.</summary>
    internal bool FewestForHits { get; init; }

    /// <summary>Loss against the number of flats.</summary>
    internal IReadOnlyList<FlatPlanPoint> Curve { get; init; } = [];

    /// <summary>The same stack dithered; null when dithering was stated, or is not possible.</summary>
    internal FlatPlanAnswer? Dithered { get; init; }
}
