namespace SensorProfile.Cli.Tests.Readme;

/// <summary>A command in a console block of a text, with the answer that is shown below it.</summary>
/// <param name="Line">Line number of the command, 1-based.</param>
/// <param name="Command">What stands after "$ ", lines continued with a backslash joined.</param>
/// <param name="AnswerLine">Line number of the first line of the answer, 1-based.</param>
/// <param name="Answer">
/// The lines below it, up to the next command or the end of the block; a last line of "…" stands for more of them.
/// </param>
internal sealed record ShownCommand(int Line, string Command, int AnswerLine, string Answer)
{
    /// <summary>The last line of an answer that is shown in part.</summary>
    public const string More = "…\n";

    private const string FromSource = "dotnet run -c Release --project src/SensorProfile.Cli -- ";

    /// <summary>Arguments for the built command; null when it is a set-up command of another program.</summary>
    public string? Arguments =>
        Command.StartsWith("sensorprofile ", StringComparison.Ordinal) ? Command["sensorprofile ".Length..]
        : Command.StartsWith(FromSource, StringComparison.Ordinal) ? Command[FromSource.Length..]
        : null;

    /// <summary>Whether an output is what is shown; nothing shown promises nothing.</summary>
    public bool Shows(string output) =>
        Answer.Length == 0
        || (
            Answer.EndsWith("\n" + More, StringComparison.Ordinal)
                ? output.StartsWith(Answer[..^More.Length], StringComparison.Ordinal) && output.Length > Answer.Length
                : output == Answer
        );

    /// <summary>The answer that would be right, as long as the one that is shown.</summary>
    public string Refreshed(string output)
    {
        if (!Answer.EndsWith(More, StringComparison.Ordinal))
            return output;
        string[] lines = output.Split('\n');
        return string.Concat(lines.Take(Answer.Count(c => c == '\n') - 1).Select(line => line + "\n")) + More;
    }

    /// <summary>Every command in the ```console blocks of a Markdown text, in order.</summary>
    public static IReadOnlyList<ShownCommand> In(string markdown)
    {
        List<ShownCommand> commands = [];
        string[] lines = markdown.ReplaceLineEndings("\n").Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i].Trim() != "```console")
                continue;
            int end = Array.FindIndex(lines, i + 1, line => line.Trim() == "```");
            if (end < 0)
                throw new InvalidDataException($"The console block in line {i + 1} has no end.");
            commands.AddRange(InBlock(lines, i + 1, end));
            i = end;
        }
        return commands;
    }

    private static IEnumerable<ShownCommand> InBlock(string[] lines, int first, int end)
    {
        for (int i = first; i < end; )
        {
            if (!lines[i].StartsWith("$ ", StringComparison.Ordinal))
                throw new InvalidDataException($"Line {i + 1} of a console block is no command and follows none.");
            int line = i + 1;
            string command = lines[i++][2..];
            while (command.EndsWith('\\') && i < end)
                command = command[..^1].TrimEnd() + " " + lines[i++].Trim();
            int answerFrom = i;
            while (i < end && !lines[i].StartsWith("$ ", StringComparison.Ordinal))
                i++;
            string answer = string.Concat(lines[answerFrom..i].Select(l => l + "\n"));
            yield return new ShownCommand(line, command, answerFrom + 1, answer);
        }
    }
}
