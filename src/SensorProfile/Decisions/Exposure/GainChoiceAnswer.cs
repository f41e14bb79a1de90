using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.Exposure;

/// <summary>
/// The advised gain setting and exposure. Quantities: shortestExposure, longestExposure (s, at the advised setting),
/// exposureNeeded (s, at the setting with the largest full well).
/// </summary>
public sealed record GainChoiceAnswer : WordedAnswer
{
    /// <summary>The sky it holds for.</summary>
    public required SkyRate Sky { get; init; }

    /// <summary>The exposure that the modes were compared at, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>All modes, largest full well first.</summary>
    public IReadOnlyList<GainRow> Modes { get; init; } = [];

    /// <summary>The settings advised.</summary>
    public required ModeSettings Advised { get; init; }

    /// <summary>The same question for other skies, when the user gave none.</summary>
    public IReadOnlyList<GainChoiceAnswer> OtherSkies { get; init; } = [];
}
