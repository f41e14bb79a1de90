using SensorProfile.NoiseModel.Answers;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Answers;

/// <summary>
/// One answer in words and numbers: what terminal, page and JSON show of it.
/// </summary>
internal sealed record AnswerDocument
{
    /// <summary>The command as it was typed, without its arguments: "darks match".</summary>
    public required string Command { get; init; }

    /// <summary>One sentence to act on: the first line.</summary>
    public required string Sentence { get; init; }

    /// <summary>The verdict as one word, for scripts.</summary>
    public required string Verdict { get; init; }

    /// <summary>Why, in a sentence or two; empty when the sentence says it all.</summary>
    public string Reason { get; init; } = "";

    /// <summary>Heading above the quantities; empty for none.</summary>
    public string QuantitiesTitle { get; init; } = "";

    public IReadOnlyList<AnswerQuantity> Quantities { get; init; } = [];

    public IReadOnlyList<AnswerTable> Tables { get; init; } = [];

    /// <summary>What the answer assumes besides the measurements, and where each assumption comes from.</summary>
    public IReadOnlyList<AnswerAssumption> Assumptions { get; init; } = [];

    /// <summary>What the user could still specify to change the answer.</summary>
    public IReadOnlyList<AnswerHint> Hints { get; init; } = [];

    /// <summary>Closing lines, printed verbatim: where the report is, commands to copy.</summary>
    public IReadOnlyList<string> Lines { get; init; } = [];

    /// <summary>
    /// Members of the JSON document that only this command has: a record, from whose type its schema is generated. Null where
    /// nothing could be answered.
    /// </summary>
    public object? Fields { get; init; }

    /// <summary>Frames that would settle an answer of "cannot tell".</summary>
    public IReadOnlyList<SettlingFrames> Settling { get; init; } = [];

    /// <summary>The answer for each colour, where colours are scaled separately.</summary>
    public IReadOnlyList<ColourAnswer> Colours { get; init; } = [];

    /// <summary>Draws the curves behind the answer, for pages; null where there are none.</summary>
    public Func<FigureBlock?>? Figure { get; init; }

    public IReadOnlyList<Finding> Findings { get; init; } = [];

    public IReadOnlyList<string> Cautions { get; init; } = [];

    public IReadOnlyList<string> RulesOfThumb { get; init; } = [];

    /// <summary>Whether the answer is "cannot tell", or something that was asked for could not be measured.</summary>
    public bool CannotTell { get; init; }
}
