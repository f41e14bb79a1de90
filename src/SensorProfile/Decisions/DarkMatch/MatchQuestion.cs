using SensorProfile.Frames;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>Do these darks fit those lights?</summary>
public sealed record MatchQuestion
{
    /// <summary>The light sets.</summary>
    public required IReadOnlyList<FrameSet> Lights { get; init; }

    /// <summary>The dark sets.</summary>
    public required IReadOnlyList<FrameSet> Darks { get; init; }

    /// <summary>The stack; its exposure and number of lights are those of the light sets.</summary>
    public StackDescription Stack { get; init; } = new();

    /// <summary>Bias frames behind the master bias; above 0 the darks may also be scaled to the lights.</summary>
    public int BiasFrames { get; init; }

    /// <summary>Largest loss that is still called usable, 0.25 = 25 %.</summary>
    internal double UsableLoss { get; init; } = 0.25;
}
