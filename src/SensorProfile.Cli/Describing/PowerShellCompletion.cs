using System.Text;

namespace SensorProfile.Cli.Describing;

/// <summary>For PowerShell 5.1 and later; where nothing is offered it completes files by itself.</summary>
internal static class PowerShellCompletion
{
    private const string Head = """
        # Completion of sensorprofile for PowerShell. In $PROFILE: sensorprofile completion powershell | Out-String | Invoke-Expression

        Register-ArgumentCompleter -Native -CommandName sensorprofile -ScriptBlock {
            param($wordToComplete, $commandAst, $cursorPosition)

            # what is typed before the cursor, without the word that is being typed
            $typed = @($commandAst.CommandElements |
                Where-Object { $_.Extent.EndOffset -lt $cursorPosition } |
                ForEach-Object { $_.ToString() } | Select-Object -Skip 1)
            $before = if ($typed.Count) { $typed[-1] } else { '' }

        """;

    private const string Tail = """
            $command = (@($typed) | Select-Object -First 2) -join ' '
            if (-not $options.ContainsKey($command)) { $command = if ($typed.Count) { $typed[0] } else { '' } }
            $plain = $wordToComplete -notlike '-*'
            $offered =
                if ($values.ContainsKey("$command $before")) { $values["$command $before"] }
                elseif ($menus.ContainsKey($typed -join ' ')) { $menus[$typed -join ' '] }
                elseif ($plain -and $arguments.ContainsKey($command)) { $arguments[$command] }
                elseif ($options.ContainsKey($command)) { $options[$command] }
            if ($offered -eq '/') {
                return [System.Management.Automation.CompletionCompleters]::CompleteFilename($wordToComplete) |
                    Where-Object { $_.ResultType -eq 'ProviderContainer' }
            }
            @($offered) | Where-Object { $_ -and $_.Split('|')[0] -like "$wordToComplete*" } | ForEach-Object {
                $word, $text = $_.Split('|', 2)
                if (-not $text) { $text = $word }
                [System.Management.Automation.CompletionResult]::new($word, $word, 'ParameterValue', $text)
            }
        }

        """;

    public static string Write(CommandModel model)
    {
        StringBuilder script = new(Head.ReplaceLineEndings("\n"));
        AppendTable(
            script,
            "menus",
            [
                ("", model.Commands.Select(c => Entry(c.Name, c.Description)).Concat(model.Options.Select(Entry))),
                .. model.Branches.Select(b => (b.Name, b.Parts.Select(p => Entry(p.LastWord, p.Description)))),
            ]
        );
        AppendTable(script, "options", model.Runnable.Select(c => (c.Name, c.Options.Select(Entry))));
        AppendTable(
            script,
            "values",
            model.Runnable.SelectMany(c =>
                c.Options.Where(o => o.Value is not null)
                    .SelectMany(o => o.Names, (o, n) => ($"{c.Name} {n}", Words(o)))
            )
        );
        AppendTable(
            script,
            "arguments",
            model.Runnable.Where(c => c.Arguments.Count > 0).Select(c => (c.Name, Words(c.Arguments[0])))
        );
        script.Append(Tail.ReplaceLineEndings("\n"));
        return script.ToString();
    }

    /// <summary>"/" for folders; an empty list where files are wanted, or what only the user knows.</summary>
    private static IEnumerable<string> Words(ParameterShape parameter) =>
        parameter.Completes == Completes.Folders ? ["/"] : parameter.Words;

    private static string Entry(ParameterShape option) => Entry(option.Names[^1], option.Description);

    private static string Entry(string word, string description) =>
        $"{word}|{CompletionScript.Short(description).Replace('|', '/')}";

    private static void AppendTable(
        StringBuilder script,
        string name,
        IEnumerable<(string Key, IEnumerable<string> Entries)> rows
    )
    {
        script.Append($"    ${name} = @{{\n");
        foreach ((string key, IEnumerable<string> entries) in rows)
            script.Append($"        {Quote(key)} = @({string.Join(", ", entries.Select(Quote))})\n");
        script.Append("    }\n");
    }

    private static string Quote(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";
}
