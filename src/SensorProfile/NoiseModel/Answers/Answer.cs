namespace SensorProfile.NoiseModel.Answers;

/// <summary>What every decision gives back: a sentence to act on, why, and the numbers behind it.</summary>
public abstract record Answer
{
    /// <summary>Verdict of an answer that the measurements cannot give; the command ends with exit code 1.</summary>
    public const string CannotTell = "cannot-tell";

    /// <summary>One sentence that a person can act on.</summary>
    public required string Sentence { get; init; }

    /// <summary>Why, in one or two sentences.</summary>
    public required string Reason { get; init; }

    /// <summary>
    /// One word for scripts; <see cref="CannotTell"/> when the interval of the answer spans both sides.
    /// </summary>
    public required string Verdict { get; init; }

    /// <summary>
    /// The numbers, by the names that scripts rely on; null where there is no limit or no answer (a finding says
    /// which).
    /// </summary>
    public IReadOnlyDictionary<string, Measurement?> Quantities { get; init; } = new Dictionary<string, Measurement?>();

    /// <summary>
    /// 95 % intervals of the quantities, where they were propagated through the profile's uncertainties.
    /// </summary>
    public IReadOnlyDictionary<string, Interval> Intervals { get; init; } = new Dictionary<string, Interval>();

    /// <summary>When it cannot be told: frames that would settle it; empty when none would.</summary>
    public IReadOnlyList<SettlingFrames> Settling { get; init; } = [];

    /// <summary>What the user should know about this answer.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Cautions for people and equipment, printed where they apply.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>What common practice says (it has no source), and how the measured camera compares.</summary>
    public IReadOnlyList<string> RulesOfThumb { get; init; } = [];
}
