using SensorProfile.Decisions.DarkCount;
using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>The darks to shoot. Quantities: totalFrames, totalTime (s), diskSpace (MB).</summary>
public sealed record PlanAnswer : WordedAnswer
{
    /// <summary>What each number of darks costs each planned stack, when light and dark agree in temperature.</summary>
    public IReadOnlyList<DarkCountAnswer> Stacks { get; init; } = [];

    /// <summary>
    /// Lights that no master could be planned for; then the verdict is cannot-tell and the masters hold for the others.
    /// </summary>
    public IReadOnlyList<UnplannedLights> Unplanned { get; init; } = [];

    /// <summary>When a master takes more darks than is practical: what dithering would save; else null.</summary>
    public DitherSaving? Saving { get; init; }

    /// <summary>The masters, in the order to shoot them.</summary>
    public IReadOnlyList<MasterPlan> Masters { get; init; } = [];
}
