using Spectre.Console.Cli;

namespace SensorProfile.Cli;

/// <summary>What is wrong with a command line, in words that help to mend it.</summary>
internal static class CommandLineErrors
{
    private const int FarthestEdits = 3;

    public static string Explain(CommandAppException problem, IReadOnlyList<string> arguments)
    {
        string message = Ending.OneLine(problem.Message);
        if (Quoted(message, "Unknown command") is { } word)
            return UnknownWord(word, arguments);
        if (Quoted(message, "Unknown option") is { } option)
            return $"The option {AsTyped(option, arguments)} is not known.";
        if (Quoted(message, "Failed to convert") is { } value)
            return $"'{value}' is not a "
                + $"{(message.Contains("Double", StringComparison.Ordinal) ? "number" : "whole number")}.";
        return message;
    }

    private static string UnknownWord(string word, IReadOnlyList<string> arguments)
    {
        string command = CommandList.NameIn(arguments);
        if (CommandList.Names.Contains(command))
            return $"'{word}' is one word too many for {command}.";
        string typed = command.Length > 0 ? $"{command} {word}" : word;
        string nearest = CommandList.Names.MinBy(name => Edits(typed, name))!;
        string tail = Edits(typed, nearest) <= FarthestEdits ? $" Did you mean '{nearest}'?" : "";
        return $"There is no command '{typed}'.{tail}";
    }

    private static string AsTyped(string option, IReadOnlyList<string> arguments) =>
        arguments.Select(a => a.Split('=')[0]).FirstOrDefault(a => a.TrimStart('-') == option) ?? option;

    private static string? Quoted(string message, string start)
    {
        if (!message.StartsWith(start, StringComparison.Ordinal))
            return null;
        string[] parts = message.Split('\'');
        return parts.Length >= 3 ? parts[1] : null;
    }

    /// <summary>Levenshtein distance: single letters inserted, deleted or replaced.</summary>
    internal static int Edits(string from, string to)
    {
        int[] row = [.. Enumerable.Range(0, to.Length + 1)];
        for (int i = 1; i <= from.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.Length; j++)
                (diagonal, row[j]) = (
                    row[j],
                    Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (from[i - 1] == to[j - 1] ? 0 : 1))
                );
        }
        return row[^1];
    }
}
