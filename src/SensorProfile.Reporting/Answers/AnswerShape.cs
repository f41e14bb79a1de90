namespace SensorProfile.Reporting.Answers;

/// <summary>What the JSON document of a command can hold, from which its schema is made.</summary>
/// <param name="Command">Its name as typed: "darks match".</param>
/// <param name="Verdicts">Words for scripts, beside "cannot-tell".</param>
/// <param name="Fields">The records with the fields of this command alone; several where it answers several questions.</param>
internal sealed record AnswerShape(string Command, IReadOnlyList<string> Verdicts, params IReadOnlyList<Type> Fields)
{
    public static AnswerShape Of<TVerdict>(string command, Type fields)
        where TVerdict : struct, Enum => new(command, Words<TVerdict>(), fields);

    /// <summary>Adds another question that the same command answers.</summary>
    public AnswerShape Or<TVerdict>(Type fields)
        where TVerdict : struct, Enum =>
        this with
        {
            Verdicts = [.. Verdicts.Union(Words<TVerdict>())],
            Fields = [.. Fields, fields],
        };

    private static string[] Words<TVerdict>()
        where TVerdict : struct, Enum => [.. Enum.GetValues<TVerdict>().Select(v => EnumWord.Of(v))];
}
