using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Decisions.Shots;

/// <summary>The frames to take. Quantities: totalFrames, totalTime (s), diskSpace (MB).</summary>
public sealed record ShotListAnswer : WordedAnswer
{
    /// <summary>The shots, in the order to take them.</summary>
    public IReadOnlyList<Shot> Shots { get; init; } = [];

    /// <summary>With existing frames: what each addition would bring, the largest gain first.</summary>
    public IReadOnlyList<ShotAddition> Additions { get; init; } = [];

    /// <summary>Uncertainties to expect now and with the listed shots, for a camera of a usual kind.</summary>
    public IReadOnlyList<ShotExpectation> Expected { get; init; } = [];
}
