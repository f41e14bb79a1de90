namespace SensorProfile.NoiseModel.Answers;

/// <summary>
/// An answer that still carries its own words; its words move to the documents of the reporting layer.
/// </summary>
public abstract record WordedAnswer : Answer
{
    /// <summary>One sentence that a person can act on.</summary>
    public required string Sentence { get; init; }

    /// <summary>Why, in one or two sentences.</summary>
    public required string Reason { get; init; }

    /// <summary>
    /// One word for scripts; <see cref="Answer.CannotTell"/> when the interval of the answer spans both sides.
    /// </summary>
    public required string Verdict { get; init; }

    /// <summary>Cautions for people and equipment, printed where they apply.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}
