using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.DarkCount;

/// <summary>The number of darks. Quantities: darks, lossAt20. Verdict: answered | cannot-tell.</summary>
public sealed record DarkCountAnswer : WordedAnswer
{
    /// <summary>The lights it holds for.</summary>
    public required StackConditions Stack { get; init; }

    /// <summary>The sky it holds for.</summary>
    public required SkyRate Sky { get; init; }

    /// <summary>Accepted rise of the noise, 0.05 = 5 %.</summary>
    public required double Loss { get; init; }

    /// <summary>Loss against the number of darks.</summary>
    public IReadOnlyList<DarkCountPoint> Curve { get; init; } = [];
}
