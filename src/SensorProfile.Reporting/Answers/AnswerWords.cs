namespace SensorProfile.Reporting.Answers;

/// <summary>The words of an answer, made from its facts.</summary>
/// <param name="Sentence">One sentence that a person can act on.</param>
/// <param name="Reason">Why, in one or two sentences.</param>
/// <param name="Verdict">One word for scripts: the name of the verdict's enumeration in kebab-case.</param>
internal sealed record AnswerWords(string Sentence, string Reason, string Verdict)
{
    /// <summary>Cautions for people and equipment.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}
