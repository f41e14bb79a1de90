using System.ComponentModel;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>The options of every command that answers a question.</summary>
internal abstract class AnswerSettings : CommandSettings
{
    [CommandOption("--json")]
    [Description("Print the answer as one JSON document.")]
    public bool Json { get; init; }

    [CommandOption("--explain")]
    [Description("Print the whole answer: every number, table, finding and caution.")]
    public bool Explain { get; init; }
}
