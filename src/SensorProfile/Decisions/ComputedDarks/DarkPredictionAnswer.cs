using SensorProfile.NoiseModel.Answers;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>A computed master dark, or why there is none.</summary>
/// <remarks>Quantities: level (ADU), uncertaintyTypical, uncertaintyHot (e-, median), equivalentFrames (frames of a
/// master dark as good), coverageTypical, coverageHot, coverageGlow (%: pixels of
/// left-out darks within their 95 % interval), coverageAgainst (%) where fresh darks were given. Verdict: computed |
/// cannot-tell.</remarks>
public sealed record DarkPredictionAnswer : WordedAnswer
{
    /// <summary>The master; null when fresh darks contradict it.</summary>
    public ComputedDark? Master { get; init; }

    /// <summary>How left-out darks were computed at characterisation.</summary>
    public required DarkPredictionProfile Trials { get; init; }

    /// <summary>The trial that speaks for this question: "exposure", "temperature" or "beyond".</summary>
    public required string Proof { get; init; }
}
