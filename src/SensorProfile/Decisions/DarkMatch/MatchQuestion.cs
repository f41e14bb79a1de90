using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>Do these darks fit those lights?</summary>
public sealed record MatchQuestion
{
    /// <summary>The light sets.</summary>
    public required IReadOnlyList<FrameSet> Lights { get; init; }

    /// <summary>The dark sets.</summary>
    public required IReadOnlyList<FrameSet> Darks { get; init; }

    /// <summary>The sky; null judges the strictest of the three named skies.</summary>
    public SkyRate? Sky { get; init; }

    /// <summary>Dither positions; null is taken as 1, the strictest.</summary>
    public int? DitherPositions { get; init; }

    /// <summary>Whether the stack rejects outliers.</summary>
    public bool RejectsOutliers { get; init; }

    /// <summary>Bias frames behind the master bias; above 0 the darks may also be scaled to the lights.</summary>
    public int BiasFrames { get; init; }

    /// <summary>The accepted losses.</summary>
    public LossLimits Limits { get; init; } = new();

    /// <summary>Largest loss that is still called usable, 0.25 = 25 %.</summary>
    public double UsableLoss { get; init; } = 0.25;
}
