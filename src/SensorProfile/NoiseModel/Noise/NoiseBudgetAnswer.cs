using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>Where the noise of a light and of a stack comes from.</summary>
public sealed record NoiseBudgetAnswer : Answer
{
    /// <summary>The sources for the typical pixel, largest first.</summary>
    public IReadOnlyList<NoiseTerm> Terms { get; init; } = [];

    /// <summary>The noise over the measured distribution of pixels; empty when the profile has none.</summary>
    public IReadOnlyList<NoiseAtRank> Pixels { get; init; } = [];

    /// <summary>
    /// The noise of one light over the pixels without and with those that jump between levels; empty when the profile
    /// holds none.
    /// </summary>
    public IReadOnlyList<FlickerAtRank> Flicker { get; init; } = [];
}
