namespace SensorProfile.Cli.Describing;

/// <summary>What a shell reads to complete commands, options and their values.</summary>
internal static class CompletionScript
{
    public static string Write(Shell shell, CommandModel model) =>
        shell switch
        {
            Shell.Bash => BashCompletion.Write(model),
            Shell.Zsh => ZshCompletion.Write(model),
            Shell.Fish => FishCompletion.Write(model),
            _ => PowerShellCompletion.Write(model),
        };

    /// <summary>In single quotes, for bash and zsh.</summary>
    public static string Quote(string text) => $"'{text.Replace("'", @"'\''", StringComparison.Ordinal)}'";

    /// <summary>The first sentence of a description: a menu has room for no more.</summary>
    public static string Short(string description)
    {
        int end = description.IndexOfAny([';', '\n']),
            stop = description.IndexOf(". ", StringComparison.Ordinal),
            question = description.IndexOf("? ", StringComparison.Ordinal);
        int[] ends = [end, stop, question < 0 ? -1 : question + 1];
        int first = ends.Where(e => e > 0).DefaultIfEmpty(description.Length).Min();
        return description[..first].TrimEnd('.');
    }
}
