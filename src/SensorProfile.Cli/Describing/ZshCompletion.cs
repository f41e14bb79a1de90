using System.Text;

namespace SensorProfile.Cli.Describing;

/// <summary>For zsh, with its own completion functions (<c>compinit</c>).</summary>
internal static class ZshCompletion
{
    private const string Head = """
        #compdef sensorprofile
        # Completion of sensorprofile for zsh. In ~/.zshrc, behind compinit: source <(sensorprofile completion zsh)
        # or save it as _sensorprofile in a folder of $fpath.

        _sensorprofile() {
            local -a commands
            local command=$words[2]

        """;

    private const string Tail = """
            esac
        }

        if [[ $funcstack[1] == _sensorprofile ]]; then
            _sensorprofile "$@"
        else
            compdef _sensorprofile sensorprofile
        fi

        """;

    public static string Write(CommandModel model)
    {
        StringBuilder script = new(Head.ReplaceLineEndings("\n"));
        script.Append("    if (( CURRENT == 2 )); then\n");
        AppendMenu(script, model.Commands.Select(c => (c.Name, c.Description)), "        ");
        script.Append($"        _arguments {string.Join(' ', model.Options.Select(Option))}\n        return\n    fi\n");
        script.Append("    case $command in\n");
        foreach (CommandShape branch in model.Branches)
        {
            script.Append($"        {branch.Name})\n            if (( CURRENT == 3 )); then\n");
            AppendMenu(script, branch.Parts.Select(p => (p.LastWord, p.Description)), "                ");
            script.Append("                return\n            fi\n            command+=\" $words[3]\"\n");
            script.Append("            shift words\n            (( CURRENT-- ))\n            ;;\n");
        }
        script.Append("    esac\n    shift words\n    (( CURRENT-- ))\n    case $command in\n");
        foreach (CommandShape command in model.Runnable)
        {
            string[] specifications = [.. command.Options.Select(Option), .. command.Arguments.Select(Argument)];
            script.Append($"        '{command.Name}')\n            _arguments \\\n                ");
            script.AppendJoin(" \\\n                ", specifications).Append("\n            ;;\n");
        }
        script.Append(Tail.ReplaceLineEndings("\n"));
        return script.ToString();
    }

    private static void AppendMenu(
        StringBuilder script,
        IEnumerable<(string Name, string Description)> commands,
        string indent
    )
    {
        script.Append($"{indent}commands=(\n");
        foreach ((string name, string description) in commands)
            script.Append($"{indent}    {CompletionScript.Quote($"{name}:{CompletionScript.Short(description)}")}\n");
        script.Append($"{indent})\n{indent}_describe -t commands command commands\n");
    }

    /// <summary>'(-h --help)'{-h,--help}'[text]', or '*--sky=[text]:E: ' when it may come again.</summary>
    private static string Option(ParameterShape option)
    {
        string text = $"[{Escape(CompletionScript.Short(option.Description))}]";
        string value = option.Value is null ? "" : $":{Escape(option.Value)}:{Offer(option)}",
            sign = option.Value is null ? "" : "=";
        if (option.Repeats)
            return CompletionScript.Quote($"*{option.Names[^1]}{sign}{text}{value}");
        return option.Names.Count == 1
            ? CompletionScript.Quote($"{option.Names[0]}{sign}{text}{value}")
            : $"'({string.Join(' ', option.Names)})'{{{string.Join(',', option.Names)}}}{CompletionScript.Quote(text + value)}";
    }

    private static string Argument(ParameterShape argument, int index) =>
        CompletionScript.Quote(
            $"{(argument.Repeats ? "*" : (index + 1).ToString(System.Globalization.CultureInfo.InvariantCulture))}:"
                + $"{Escape(argument.Value!)}:{Offer(argument)}"
        );

    private static string Offer(ParameterShape parameter) =>
        parameter.Completes switch
        {
            Completes.Words => $"({string.Join(' ', parameter.Words)})",
            Completes.Files => "_files",
            Completes.Folders => "_files -/",
            _ => " ",
        };

    private static string Escape(string text)
    {
        StringBuilder escaped = new(text.Length);
        foreach (char c in text)
            escaped.Append(c is '[' or ']' or ':' or '\\' ? $"\\{c}" : c.ToString());
        return escaped.ToString();
    }
}
