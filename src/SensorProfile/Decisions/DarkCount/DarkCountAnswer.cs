using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.DarkCount;

/// <summary>The number of darks. Quantities: darks, lossAt20.</summary>
internal sealed record DarkCountAnswer : Answer
{
    /// <summary>The lights it holds for.</summary>
    public required StackConditions Stack { get; init; }

    /// <summary>The sky it holds for.</summary>
    public required SkyRate Sky { get; init; }

    /// <summary>Accepted rise of the noise, 0.05 = 5 %.</summary>
    public required double Loss { get; init; }

    /// <summary>The smallest number of darks that stays within the loss.</summary>
    public required int Darks { get; init; }

    /// <summary>Whether the noise alone would allow fewer darks than it takes to recognise a cosmic-ray hit.</summary>
    public required bool FewestForHits { get; init; }

    /// <summary>Noise of one dark over that of one light, in the typical pixel.</summary>
    public required double NoiseRatio { get; init; }

    /// <summary>Loss against the number of darks.</summary>
    public IReadOnlyList<DarkCountPoint> Curve { get; init; } = [];
}
