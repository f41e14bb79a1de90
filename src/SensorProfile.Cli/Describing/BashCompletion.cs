using System.Text;

namespace SensorProfile.Cli.Describing;

/// <summary>For bash 4 and later; needs nothing but bash itself.</summary>
internal static class BashCompletion
{
    private const string Head = """
        # Completion of sensorprofile for bash 4 and later. In ~/.bashrc: source <(sensorprofile completion bash)

        _sensorprofile_words() {
            mapfile -t COMPREPLY < <(compgen -W "$1" -- "$current")
        }

        _sensorprofile_files() { # -f: files and folders, -d: folders
            compopt -o filenames 2>/dev/null
            mapfile -t COMPREPLY < <(compgen "$1" -- "$current")
        }

        _sensorprofile() {
            local current=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command=${COMP_WORDS[1]}
            COMPREPLY=()
            # --option=value comes as three words
            if [[ $current == "=" ]]; then
                current=""
            elif [[ $before == "=" ]]; then
                before=${COMP_WORDS[COMP_CWORD - 2]}
            fi

        """;

    public static string Write(CommandModel model)
    {
        StringBuilder script = new(Head.ReplaceLineEndings("\n"));
        string first = Words([
            .. model.Commands.Select(c => c.Name),
            .. model.Options.SelectMany(o => o.Names).Where(IsLong),
        ]);
        script.Append($"    if ((COMP_CWORD == 1)); then\n        {first}\n        return\n    fi\n");
        script.Append("    case $command in\n");
        foreach (CommandShape branch in model.Branches)
            script.Append(
                $"""
                        {branch.Name})
                            if ((COMP_CWORD == 2)); then
                                {Words([.. branch.Parts.Select(p => p.LastWord), "--help"])}
                                return
                            fi
                            command+=" {"${COMP_WORDS[2]}"}"
                            ;;

                """.ReplaceLineEndings("\n")
            );
        script.Append("    esac\n    case $command in\n");
        foreach (CommandShape command in model.Runnable)
            Append(script, command);
        script.Append("    esac\n}\ncomplete -F _sensorprofile sensorprofile\n");
        return script.ToString();
    }

    private static void Append(StringBuilder script, CommandShape command)
    {
        script.Append($"        '{command.Name}')\n            case $before in\n");
        foreach (
            IGrouping<string, ParameterShape> alike in command
                .Options.Where(o => o.Value is not null)
                .GroupBy(o => Offer(o))
        )
            script.Append($"                {string.Join(" | ", alike.SelectMany(o => o.Names))}) {alike.Key} ;;\n");
        string options = Words(command.Options.SelectMany(o => o.Names).Where(IsLong));
        script.Append(
            $"                *)\n                    if [[ $current == -* ]]; then\n                        {options}\n"
        );
        script.Append(
            $"                    else\n                        {command.Arguments.Select(Offer).FirstOrDefault(options)}\n"
        );
        script.Append("                    fi\n                    ;;\n            esac\n            ;;\n");
    }

    private static string Offer(ParameterShape parameter) =>
        parameter.Completes switch
        {
            Completes.Words => Words(parameter.Words),
            Completes.Files => "_sensorprofile_files -f",
            Completes.Folders => "_sensorprofile_files -d",
            _ => ":",
        };

    private static string Words(IEnumerable<string> words) => $"_sensorprofile_words '{string.Join(' ', words)}'";

    private static bool IsLong(string name) => name.StartsWith("--", StringComparison.Ordinal);
}
