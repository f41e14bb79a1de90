namespace SensorProfile.Decisions;

/// <summary>The darks to shoot. Quantities: totalFrames, totalTime (s), diskSpace (MB).</summary>
public sealed record PlanAnswer : Answer
{
    /// <summary>What each number of darks costs each planned stack, when light and dark agree in temperature.</summary>
    public IReadOnlyList<DarkCountAnswer> Stacks { get; init; } = [];

    /// <summary>The masters, in the order to shoot them.</summary>
    public IReadOnlyList<MasterPlan> Masters { get; init; } = [];
}
