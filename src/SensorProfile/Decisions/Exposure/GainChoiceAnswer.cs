using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.Exposure;

/// <summary>What can be said about an exposure.</summary>
public enum ExposureVerdict
{
    /// <summary>No exposure was given: the answer names the shortest useful one.</summary>
    Answered,

    /// <summary>The exposure given stays within the loss.</summary>
    LongEnough,

    /// <summary>Read noise costs more than the loss at the exposure given.</summary>
    TooShort,
}

/// <summary>
/// The advised gain setting and exposure. Quantities: shortestExposure, longestExposure (s, at the advised setting),
/// exposureNeeded (s, at the setting with the largest full well).
/// </summary>
public sealed record GainChoiceAnswer : Answer
{
    /// <summary>Whether the exposure given is long enough.</summary>
    public ExposureVerdict Verdict { get; init; }

    /// <summary>The sky it holds for.</summary>
    public required SkyRate Sky { get; init; }

    /// <summary>The exposure at which the modes were compared, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>Accepted rise of the noise by read noise, 0.05 = 5 %.</summary>
    public required double Loss { get; init; }

    /// <summary>Part of the full well that sky and dark current may fill.</summary>
    public required double Fill { get; init; }

    /// <summary>Whether the sky drowns the read noise of any setting at that exposure.</summary>
    public required bool Drowned { get; init; }

    /// <summary>All modes, largest full well first.</summary>
    public IReadOnlyList<GainRow> Modes { get; init; } = [];

    /// <summary>The settings advised.</summary>
    public required ModeSettings Advised { get; init; }

    /// <summary>The row of <see cref="Modes"/> with the settings advised.</summary>
    internal GainRow AdvisedRow => Modes.First(row => row.Settings == Advised);

    /// <summary>Exposure at the advised setting that drowns its read noise, rounded up to a timer setting, s.</summary>
    public double ShortestUseful => SubExposure.Up(AdvisedRow.ExposureNeeded.Value);

    /// <summary>The same question for other skies, when three were asked for.</summary>
    public IReadOnlyList<GainChoiceAnswer> OtherSkies { get; init; } = [];
}
