using System.Text.Json;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

/// <summary><c>fleet</c>: every camera of an archive in one line.</summary>
public sealed class FleetCommandTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void EveryCameraHasALineWithItsVerdict()
    {
        foreach ((string place, string name) in new[] { ("a", "Tarn-9M"), ("b", "Fell-24C") })
        {
            Directory.CreateDirectory(folder[$"archive/{place}"]);
            TarnProfile.WriteNamed(folder[$"archive/{place}/profile.json"], name);
        }
        Directory.CreateDirectory(folder["archive/c"]);
        File.WriteAllText(folder["archive/c/profile.json"], "{ spoilt");

        CommandRun run = folder.Command.Run("fleet", "archive", "--json").Expect(ExitCodes.Answered);
        JsonElement answer = run.Json;
        Assert.Equal("All 2 cameras are in order.", answer.GetProperty("sentence").GetString());
        Assert.Equal("in-order", answer.GetProperty("verdict").GetString());
        JsonElement[] cameras = [.. answer.GetProperty("cameras").EnumerateArray()];
        Assert.Equal(["Fell-24C", "Tarn-9M"], cameras.Select(c => c.GetProperty("camera").GetString()));
        Assert.All(cameras, c => Assert.Equal("measured", c.GetProperty("verdict").GetString()));
        Assert.All(cameras, c => Assert.Equal(1, c.GetProperty("sessions").GetInt32()));
        Assert.Equal(1, answer.GetProperty("refused").GetArrayLength());
        Assert.Contains("left out: ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderWithoutAProfileIsNamed()
    {
        Directory.CreateDirectory(folder["empty"]);
        CommandRun run = folder.Command.Run("fleet", "empty").Expect(ExitCodes.UnreadableInput);
        Assert.Contains("empty", run.Error, StringComparison.Ordinal);
    }
}
