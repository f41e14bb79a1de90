namespace SensorProfile.Cli.Describing;

/// <summary>A shell that completes what is typed.</summary>
internal enum Shell
{
    Bash,
    Zsh,
    Fish,
    Powershell,
}
