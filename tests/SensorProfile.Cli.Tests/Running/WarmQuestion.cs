namespace SensorProfile.Cli.Tests.Running;

/// <summary>A command line and the surroundings in which it is to run.</summary>
/// <param name="Folder">The current folder.</param>
/// <param name="Variables">Set on top of the environment; null removes a variable.</param>
/// <param name="Arguments">What the user typed.</param>
internal sealed record WarmQuestion(
    string Folder,
    IReadOnlyDictionary<string, string?> Variables,
    IReadOnlyList<string> Arguments
);
