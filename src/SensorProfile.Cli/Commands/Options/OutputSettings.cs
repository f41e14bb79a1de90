using System.ComponentModel;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>The options of commands that write a folder.</summary>
internal abstract class OutputSettings : AnswerSettings
{
    [CommandOption("--out <DIR>")]
    [Description("Folder for the results; created by the command, refused when it exists.")]
    public string? Out { get; init; }

    [CommandOption("--overwrite")]
    [Description("Replace earlier results in that folder; other files in it stay.")]
    public bool Overwrite { get; init; }

    public string RequiredOut(string command) =>
        string.IsNullOrWhiteSpace(Out)
            ? throw CommandFailure.WrongCommandLine($"{command} needs --out, the folder for the results.")
            : Out;
}
