using SensorProfile.Profiles;

namespace SensorProfile.Decisions;

/// <summary>The advised gain setting. Quantities: exposureNeeded (s, for the mode with the largest full well).</summary>
public sealed record GainChoiceAnswer : Answer
{
    /// <summary>All modes, largest full well first.</summary>
    public IReadOnlyList<GainRow> Modes { get; init; } = [];

    /// <summary>The settings advised.</summary>
    public required ModeSettings Advised { get; init; }
}
