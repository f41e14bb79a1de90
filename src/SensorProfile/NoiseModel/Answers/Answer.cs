namespace SensorProfile.NoiseModel.Answers;

/// <summary>What every decision returns: numbers with their uncertainty, and findings.</summary>
public abstract record Answer
{
    /// <summary>Verdict when the measurements cannot give an answer; the command then ends with exit code 1.</summary>
    public const string CannotTell = "cannot-tell";

    /// <summary>
    /// The numbers, under the names that scripts rely on; null where there is no limit or no answer (a finding says
    /// which).
    /// </summary>
    public IReadOnlyDictionary<string, Measurement?> Quantities { get; init; } = new Dictionary<string, Measurement?>();

    /// <summary>
    /// 95 % intervals of the quantities, where they were propagated through the profile's uncertainties.
    /// </summary>
    public IReadOnlyDictionary<string, Interval> Intervals { get; init; } = new Dictionary<string, Interval>();

    /// <summary>
    /// The same numbers for each colour of a camera that scales its colours separately; the answer as a whole is then
    /// the strictest colour's. Empty for all other cameras.
    /// </summary>
    public IReadOnlyList<ColourAnswer> Colours { get; init; } = [];

    /// <summary>Frames that would settle an answer still open; empty when none would.</summary>
    internal IReadOnlyList<SettlingFrames> Settling { get; init; } = [];

    /// <summary>What the user should know about this answer.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>What common practice says (it has no source), and how the measured camera compares.</summary>
    public IReadOnlyList<string> RulesOfThumb { get; init; } = [];
}
