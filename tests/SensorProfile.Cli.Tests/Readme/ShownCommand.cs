namespace SensorProfile.Cli.Tests.Readme;

/// <summary>A command in a console block of a text, with the answer that is shown below it.</summary>
/// <param name="Line">Line number of the command, 1-based.</param>
/// <param name="Command">What stands after "$ ", lines continued with a backslash joined.</param>
/// <param name="Answer">The lines below it, up to the next command or the end of the block.</param>
internal sealed record ShownCommand(int Line, string Command, string Answer)
{
    private const string FromSource = "dotnet run -c Release --project src/SensorProfile.Cli -- ";

    /// <summary>Arguments for the built command; null when it is a set-up command of another program.</summary>
    public string? Arguments =>
        Command.StartsWith("sensorprofile ", StringComparison.Ordinal) ? Command["sensorprofile ".Length..]
        : Command.StartsWith(FromSource, StringComparison.Ordinal) ? Command[FromSource.Length..]
        : null;

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
            yield return new ShownCommand(line, command, string.Concat(lines[answerFrom..i].Select(l => l + "\n")));
        }
    }
}
