namespace SensorProfile.Cli.Describing;

/// <summary>A command, or a branch of several, as the command line's own parser knows it.</summary>
/// <param name="Name">As typed: "darks match".</param>
/// <param name="Description">From the help.</param>
/// <param name="Options">Those of the help, and the help itself.</param>
/// <param name="Arguments">In their order.</param>
/// <param name="Examples">From the help, word by word.</param>
/// <param name="Parts">The commands of a branch.</param>
internal sealed record CommandShape(
    string Name,
    string Description,
    IReadOnlyList<ParameterShape> Options,
    IReadOnlyList<ParameterShape> Arguments,
    IReadOnlyList<string[]> Examples,
    IReadOnlyList<CommandShape> Parts
)
{
    public bool IsBranch => Parts.Count > 0;

    public string LastWord => Name[(Name.LastIndexOf(' ') + 1)..];
}
