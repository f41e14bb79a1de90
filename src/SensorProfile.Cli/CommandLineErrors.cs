using SensorProfile.Cli.Defaults;
using Spectre.Console.Cli;

namespace SensorProfile.Cli;

/// <summary>Says what is wrong with a command line and how to correct it.</summary>
/// <remarks>
/// Compares the arguments with the options and arguments that the command declares, whatever the parser says about
/// them; other errors are reported in the parser's own words.
/// </remarks>
internal static class CommandLineErrors
{
    private const int FarthestEdits = 3;

    public static string Explain(CommandAppException problem, IReadOnlyList<string> arguments)
    {
        string command = CommandList.NameIn(arguments);
        return CommandList.SettingsOf(command) is { } settings
            ? Wrong(command, new SettingsOptions(settings), arguments.Skip(command.Split(' ').Length))
                ?? FailureReport.OneLine(problem.Message)
            : UnknownCommand(command, arguments) ?? FailureReport.OneLine(problem.Message);
    }

    private static string? UnknownCommand(string branch, IReadOnlyList<string> arguments)
    {
        string word = arguments.ElementAtOrDefault(branch.Length > 0 ? 1 : 0) ?? "";
        if (word.Length == 0)
            return null;
        if (IsOption(word))
            return UnknownOption(word);
        string typed = branch.Length > 0 ? $"{branch} {word}" : word;
        string nearest = CommandList.Names.MinBy(name => Edits(typed, name))!;
        string tail = Edits(typed, nearest) <= FarthestEdits ? $" Did you mean '{nearest}'?" : "";
        return $"There is no command '{typed}'.{tail}";
    }

    /// <summary>The first option that the command does not know, or argument that it has no place for.</summary>
    private static string? Wrong(string command, SettingsOptions known, IEnumerable<string> arguments)
    {
        int places = known.Places;
        bool isValue = false;
        foreach (string argument in arguments)
        {
            if (isValue)
            {
                isValue = false;
                continue;
            }
            if (IsOption(argument))
            {
                string[] parts = argument.Split('=', 2);
                if (!known.Has(parts[0]))
                    return UnknownOption(argument);
                isValue = known.TakesValue(parts[0]) && parts.Length == 1;
            }
            else if (places-- <= 0)
                return $"'{argument}' is one argument too many for {command}.";
        }
        return null;
    }

    private static bool IsOption(string argument) => argument.Length > 1 && argument[0] == '-';

    private static string UnknownOption(string argument) => $"The option {argument.Split('=')[0]} is not known.";

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
