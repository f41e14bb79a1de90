using System.Text;

namespace SensorProfile.Cli.Describing;

/// <summary>For fish.</summary>
internal static class FishCompletion
{
    private const string Head = """
        # Completion of sensorprofile for fish:
        #   sensorprofile completion fish > ~/.config/fish/completions/sensorprofile.fish

        function __sensorprofile_typed --description 'The words behind the program, as many as asked for'
            set -l words (commandline -opc)
            test (count $words) -gt $argv[1]; and echo $words[2..(math $argv[1] + 1)]
        end

        function __sensorprofile_begins --description 'Nothing but the words given is typed'
            set -l words (commandline -opc)
            test "$words[2..]" = "$argv"
        end

        function __sensorprofile_is --description 'The command line begins with the words given'
            test (__sensorprofile_typed (count $argv)) = "$argv" 2>/dev/null
        end

        complete -c sensorprofile -f

        """;

    public static string Write(CommandModel model)
    {
        StringBuilder script = new(Head.ReplaceLineEndings("\n"));
        foreach (ParameterShape option in model.Options)
            Append(script, "__sensorprofile_begins", option);
        foreach (CommandShape command in model.Commands)
            AppendWord(script, "__sensorprofile_begins", command.Name, command.Description);
        foreach (CommandShape branch in model.Branches)
        foreach (CommandShape part in branch.Parts)
            AppendWord(script, $"__sensorprofile_begins {branch.Name}", part.LastWord, part.Description);
        foreach (CommandShape command in model.Runnable)
        {
            string condition = $"__sensorprofile_is {command.Name}";
            foreach (ParameterShape option in command.Options)
                Append(script, condition, option);
            if (command.Arguments is [ParameterShape argument, ..])
                script.Append($"complete -c sensorprofile -n '{condition}'{Offer(argument, isOption: false)}\n");
        }
        return script.ToString();
    }

    private static void AppendWord(StringBuilder script, string condition, string word, string description) =>
        script.Append(
            $"complete -c sensorprofile -n '{condition}' -a {word} -d {Quote(CompletionScript.Short(description))}\n"
        );

    private static void Append(StringBuilder script, string condition, ParameterShape option)
    {
        script.Append($"complete -c sensorprofile -n '{condition}'");
        foreach (string name in option.Names)
            script.Append(name.StartsWith("--", StringComparison.Ordinal) ? $" -l {name[2..]}" : $" -s {name[1..]}");
        if (option.Value is not null)
            script.Append(Offer(option, isOption: true));
        script.Append($" -d {Quote(CompletionScript.Short(option.Description))}\n");
    }

    /// <summary>-x and -r: an option that needs a value, without files or with them.</summary>
    private static string Offer(ParameterShape parameter, bool isOption) =>
        parameter.Completes switch
        {
            Completes.Words => $"{(isOption ? " -x" : "")} -a '{string.Join(' ', parameter.Words)}'",
            Completes.Files => isOption ? " -r -F" : " -F",
            Completes.Folders => $"{(isOption ? " -x" : "")} -a '(__fish_complete_directories (commandline -ct))'",
            _ => isOption ? " -x" : "",
        };

    private static string Quote(string text) =>
        $"'{text.Replace(@"\", @"\\", StringComparison.Ordinal).Replace("'", @"\'", StringComparison.Ordinal)}'";
}
