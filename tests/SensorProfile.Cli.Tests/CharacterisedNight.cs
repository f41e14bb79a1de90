using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

/// <summary>One small night, characterised once for all tests of a class: <c>night</c> and <c>results</c>.</summary>
public sealed class CharacterisedNight : IDisposable
{
    public CharacterisedNight()
    {
        SimulatedNight.Write(Folder["night"], SimulatedNight.Full);
        Folder.Command.Run("characterise", "night", "--out", "results").Expect(ExitCodes.Answered);
    }

    internal TemporaryFolder Folder { get; } = new();

    public void Dispose() => Folder.Dispose();
}
