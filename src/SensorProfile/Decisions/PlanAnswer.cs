namespace SensorProfile.Decisions;

/// <summary>The darks to shoot. Quantities: totalFrames, totalTime (s), diskSpace (MB).</summary>
public sealed record PlanAnswer : Answer
{
    /// <summary>The masters, in the order to shoot them.</summary>
    public IReadOnlyList<MasterPlan> Masters { get; init; } = [];
}
