namespace SensorProfile.Cli.Tests.Running;

internal sealed partial class TemporaryFolder
{
    /// <summary>The command, run in this folder.</summary>
    public SensorProfileCommand Command => new() { WorkingDirectory = Path };
}
