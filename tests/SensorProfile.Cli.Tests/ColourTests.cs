using System.Text.Json;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

public sealed class ColourTests
{
    [Fact]
    public void AColourCameraIsShownColourByColour()
    {
        using TemporaryFolder folder = new();
        SimulatedNight.Write(
            folder["night"],
            SimulatedNight.Full.Replace(
                "\"gain\": 0.8",
                "\"colourFilter\": \"RGGB\", \"gain\": 0.8",
                StringComparison.Ordinal
            )
        );
        CommandRun run = folder
            .Command.Run("characterise", "night", "--out", "out", "--explain")
            .Expect(ExitCodes.Answered);
        Assert.Contains("\nColour by colour\n", run.Output, StringComparison.Ordinal);
        using JsonDocument again = JsonDocument.Parse(
            folder.Command.Run("report", "out", "--out", "again", "--json").Expect(ExitCodes.Answered).Output
        );
        Assert.Equal(
            ["R", "G1", "G2", "B"],
            again
                .RootElement.GetProperty("modes")[0]
                .GetProperty("channels")
                .EnumerateArray()
                .Select(c => c.GetProperty("name").GetString())
        );
    }
}
