using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Exposure;

/// <summary>The shortest worthwhile exposure. Quantities: shortestExposure (s).</summary>
public sealed record SubExposureAnswer : WordedAnswer
{
    /// <summary>The sky it holds for.</summary>
    public required SkyRate Sky { get; init; }

    /// <summary>Loss against exposure, 1 s to 1000 s.</summary>
    public IReadOnlyList<SubExposurePoint> Curve { get; init; } = [];

    /// <summary>The same question for other skies, when the user gave none.</summary>
    public IReadOnlyList<SubExposureAnswer> OtherSkies { get; init; } = [];
}
