namespace SensorProfile.NoiseModel.Answers;

/// <summary>What every decision gives back: facts: numbers with their uncertainty, and findings.</summary>
public abstract record Answer
{
    /// <summary>Verdict of an answer that the measurements cannot give; the command ends with exit code 1.</summary>
    public const string CannotTell = "cannot-tell";

    /// <summary>
    /// The numbers, by the names that scripts rely on; null where there is no limit or no answer (a finding says
    /// which).
    /// </summary>
    public IReadOnlyDictionary<string, Measurement?> Quantities { get; init; } = new Dictionary<string, Measurement?>();

    /// <summary>
    /// 95 % intervals of the quantities, where they were propagated through the profile's uncertainties.
    /// </summary>
    public IReadOnlyDictionary<string, Interval> Intervals { get; init; } = new Dictionary<string, Interval>();

    /// <summary>
    /// The same numbers colour by colour, for a camera that scales its colours apart: the answer is then that of the
    /// strictest. Empty for all others.
    /// </summary>
    public IReadOnlyList<ColourAnswer> Colours { get; init; } = [];

    /// <summary>When it cannot be told: frames that would settle it; empty when none would.</summary>
    public IReadOnlyList<SettlingFrames> Settling { get; init; } = [];

    /// <summary>What the user should know about this answer.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>What common practice says (it has no source), and how the measured camera compares.</summary>
    public IReadOnlyList<string> RulesOfThumb { get; init; } = [];
}
