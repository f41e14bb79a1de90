using SensorProfile.Decisions.DarkCount;
using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>The darks to shoot. Quantities: totalFrames, totalTime (s), diskSpace (MB).</summary>
public sealed record PlanAnswer : Answer
{
    /// <summary>Whether every planned light is served.</summary>
    public required PlanVerdict Verdict { get; init; }

    /// <summary>Whether the camera has a cooler.</summary>
    public required bool Cooled { get; init; }

    /// <summary>Accepted rise of the noise, 0.05 = 5 %.</summary>
    public required double Loss { get; init; }

    /// <summary>Masters of the plan with the fewest masters.</summary>
    public int CoverMasters { get; init; }

    /// <summary>Darks of that plan.</summary>
    public double CoverFrames { get; init; }

    /// <summary>
    /// Darks that would show the distribution over pixels, on which the reach of one master depends; null when the
    /// profile knows it, or the plan does not need it.
    /// </summary>
    internal SettlingFrames? SpreadDarks { get; init; }

    /// <summary>
    /// What each number of darks costs each planned stack, when lights and darks have the same temperature.
    /// </summary>
    internal IReadOnlyList<DarkCountAnswer> Stacks { get; init; } = [];

    /// <summary>
    /// Lights for which no master could be planned; the verdict is then cannot-tell, and the masters hold for the
    /// others.
    /// </summary>
    internal IReadOnlyList<UnplannedLights> Unplanned { get; init; } = [];

    /// <summary>What dithering would save when a master takes more darks than is practical; otherwise null.</summary>
    internal DitherSaving? Saving { get; init; }

    /// <summary>The masters, in the order to shoot them.</summary>
    public IReadOnlyList<MasterPlan> Masters { get; init; } = [];
}
