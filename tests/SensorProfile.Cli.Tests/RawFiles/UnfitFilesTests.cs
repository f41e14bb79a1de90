using System.Text.Json;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Raw.LibRaw;

namespace SensorProfile.Cli.Tests.RawFiles;

/// <summary>A folder in which files that cannot serve stand among good frames.</summary>
public sealed class UnfitFilesTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    private readonly IReadOnlyDictionary<string, string[]> unfit;

    public UnfitFilesTests()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        unfit = UnfitFiles.Write(folder["night"]);
        File.WriteAllBytes(folder["night/a.jpg"], [0xFF, 0xD8, 0xFF, 0xE1, 0, 0]);
        File.WriteAllBytes(folder["night/b.mp4"], [0, 0, 0, 0x18, .. "ftypmp42"u8]);
        File.WriteAllText(folder["night/notes.txt"], "Cloud from midnight.");
        for (int i = 0; i < 5; i++)
            File.WriteAllBytes(folder[$"night/other{i}.raf"], new byte[5000]);
        for (int i = 0; i < 3; i++)
            File.WriteAllBytes(folder[$"night/stack{i}.XYZ"], [7, 0, 1, 2]);
        File.WriteAllBytes(folder["night/odd.x y"], [7, 0, 1, 2]);
    }

    public void Dispose() => folder.Dispose();

    private SensorProfileCommand WithoutLibRaw =>
        folder.Command with
        {
            Environment = new Dictionary<string, string?> { [LibRawLibrary.PathVariable] = "/not/there/libraw.so" },
        };

    [Theory]
    [InlineData("survey")]
    [InlineData("characterise")]
    public void EachIsNamedOnceWithReasonAndRemedyAndTheRestGoesOn(string command)
    {
        string[] arguments = command == "survey" ? [command, "night"] : [command, "night", "--out", "results"];
        CommandRun run = WithoutLibRaw.Run(arguments);
        Assert.True(run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell, run.Error);
        foreach ((string name, string[] said) in unfit)
        {
            string line = Assert.Single(run.Error.Split('\n'), l => l.Contains(name, StringComparison.Ordinal));
            Assert.StartsWith($"left out: {name}: ", line, StringComparison.Ordinal);
            Assert.All(said, part => Assert.Contains(part, line, StringComparison.OrdinalIgnoreCase));
        }
        Assert.Contains(
            "left out: other0.raf and 4 more files: LibRaw is not installed. Install LibRaw",
            run.Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void SurveyCountsWhatItPassedOverByKind()
    {
        CommandRun run = WithoutLibRaw.Run("survey", "night", "--json").Expect(ExitCodes.Answered);
        JsonElement answer = run.Json;
        Assert.Contains(
            "6 frames in 2 sets can be used, 22 files left out; passed over: ",
            answer.GetProperty("reason").GetString(),
            StringComparison.Ordinal
        );
        var kinds = answer
            .GetProperty("passedOver")
            .EnumerateArray()
            .ToDictionary(k => k.GetProperty("kind").GetString()!, k => k.GetProperty("files").GetInt32());
        Assert.Equal(1, kinds["JPEG picture"]);
        Assert.Equal(1, kinds["film"]);
        Assert.Equal(3, kinds[".xyz file"]);
        Assert.Equal(1, kinds["other file"]);
        Assert.Equal(22, answer.GetProperty("rejected").GetArrayLength());
    }
}
