using System.Text.Json;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

/// <summary>Questions that are wrong, or that a profile cannot answer.</summary>
public sealed class DecisionRefusalTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public DecisionRefusalTests() => TarnProfile.Write(folder["profile.json"]);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void AQuestionTheProfileCannotAnswerIsExitCode1InTextAndJson()
    {
        File.WriteAllText(folder["empty.json"], "{ \"schemaVersion\": 1, \"modes\": [] }");
        CommandRun text = folder
            .Command.Run("setpoint", "empty.json", "--exposure", "300")
            .Expect(ExitCodes.CannotTell);
        JsonElement json = folder
            .Command.Run("setpoint", "empty.json", "--exposure", "300", "--json")
            .Expect(ExitCodes.CannotTell)
            .Json;
        Assert.Equal("cannot-tell", json.GetProperty("verdict").GetString());
        Assert.Equal(text.FirstLine, json.GetProperty("sentence").GetString());
        Assert.Equal("refusal", json.GetProperty("findings")[0].GetProperty("severity").GetString());
    }

    [Theory]
    [InlineData("setpoint profile.json --exposure 300 --sky 0")]
    [InlineData("setpoint profile.json --exposure -5 --sky 2")]
    [InlineData("setpoint profile.json --exposure 300 --sky 2 --sky-brightness 20")]
    [InlineData("setpoint profile.json --exposure 300 --sky-brightness 20")]
    [InlineData("setpoint profile.json --exposure 300 --focal-ratio 5")]
    [InlineData("darks match profile.json --exposure 300")]
    [InlineData("darks match profile.json --lights 40")]
    [InlineData("darks match --exposure 300 --lights 40")]
    [InlineData("darks match --darks somewhere --lights 40")]
    [InlineData("darks match --darks somewhere --lights somewhere --exposure 300")]
    [InlineData("darks match --darks somewhere --lights somewhere --scaled")]
    [InlineData("darks match profile.json --exposure 300 --lights 40 --bias-frames 20")]
    [InlineData("darks plan profile.json --exposure 300 --lights somewhere")]
    [InlineData("darks plan profile.json --dithers 0")]
    [InlineData("darks plan profile.json --exposure 300 --csv profile.json --overwrite")]
    [InlineData("setpoint profile.json --exposure 300 --sky 2 --lights somewhere")]
    [InlineData("exposure profile.json --sky 2 --lights somewhere")]
    [InlineData("exposure profile.json --darks somewhere")]
    [InlineData("setpoint profile.json --exposure 300 --sky 2 --uncooled --self-heating -1")]
    [InlineData("setpoint profile.json --exposure 300 --sky 2 --ambient 15 --max-delta 5 --margin 6")]
    [InlineData("shots --longest 1e6")]
    [InlineData("shots --max-delta 1000")]
    [InlineData("setpoint two.json --exposure 300 --sky 2")]
    [InlineData("shots --cooled --uncooled")]
    [InlineData("shots --uncooled --max-delta 30")]
    [InlineData("shots --names-say")]
    [InlineData("shots --have somewhere --size 300x200")]
    [InlineData("setpoint profile.json --exposure 300 --sky 2 --uncooled --max-delta 30")]
    [InlineData("setpoint profile.json --exposure 300 --sky 2 --uncooled --margin 3")]
    [InlineData("setpoint profile.json --exposure 300 --sky 2 --self-heating 3")]
    [InlineData("setpoint profile.json --exposure 300 --sky 2 --ambient 15 --margin 3")]
    [InlineData("setpoint profile.json --exposure 300 --sky 2 --max-delta 30")]
    [InlineData("darks match profile.json --exposure 300 --lights 40 --table captures.csv")]
    [InlineData("darks match profile.json --exposure 300 --lights 40 --names-say")]
    [InlineData("darks match profile.json --exposure 300 --lights 40 --profile profile.json")]
    [InlineData("darks match --lights somewhere --darks somewhere --sky 2")]
    [InlineData("darks match --lights somewhere --darks somewhere --bias-frames 20")]
    [InlineData("darks plan profile.json --exposure 300 --table captures.csv")]
    [InlineData("darks plan profile.json --exposure 300 --night night.csv --until 5")]
    [InlineData("darks plan profile.json --lights somewhere --night night.csv")]
    [InlineData("darks predict profile.json --temperature -12 --exposure 180 --out dark.fits --table captures.csv")]
    [InlineData("darks check master.fits --against somewhere --sky 2")]
    [InlineData("darks check master.fits --against somewhere --gain 100")]
    [InlineData("shots --size 3000")]
    public void AWrongQuestionIsExitCode2WithOneLine(string arguments)
    {
        TarnProfile.Write(folder["two.json"], TarnProfile.Mode(0));
        CommandRun run = folder.Command.Run(arguments.Split(' ')).Expect(ExitCodes.WrongCommandLine);
        Assert.Equal("", run.Output);
        Assert.Single(run.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains("Try: sensorprofile ", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("match", "-3", "The number of lights must be a whole number of 1 or more, not -3.")]
    [InlineData("plan", "-3", "The number of lights must be a whole number of 1 or more, not -3.")]
    [InlineData("match", "0", "The number of lights must be a whole number of 1 or more, not 0.")]
    [InlineData("match", "2.5", "The number of lights must be a whole number of 1 or more, not 2.5.")]
    [InlineData("plan", "NaN", "The number of lights must be a whole number of 1 or more, not NaN.")]
    [InlineData("match", "many", "'many' is not a number of lights: give their number, or add --darks PATH")]
    public void ANumberOfLightsThatIsNoneIsNamed(string command, string lights, string message) =>
        Assert.Contains(
            message,
            folder
                .Command.Run("darks", command, "profile.json", "--exposure", "300", "--lights", lights)
                .Expect(ExitCodes.WrongCommandLine)
                .Error,
            StringComparison.Ordinal
        );

    [Fact]
    public void AModeIsChosenByItsSettings()
    {
        TarnProfile.Write(folder["two.json"], TarnProfile.Mode(0));
        folder
            .Command.Run("setpoint", "two.json", "--exposure", "300", "--sky", "2", "--gain", "0")
            .Expect(ExitCodes.Answered);
        folder.Command.Run("darks", "plan", "two.json", "--gain", "0").Expect(ExitCodes.Answered);
    }

    [Theory]
    [InlineData(
        "{ \"schemaVersion\": 1, \"modes\": [ { \"readNoise\": { \"value\": \"much\" } } ] }",
        "$.modes[0].readNoise.value"
    )]
    [InlineData("{ \"schemaVersion\": 99 }", "99")]
    [InlineData("not a profile", "line 1")]
    public void ADamagedProfileIsExitCode3AndThePlaceIsNamed(string content, string place)
    {
        File.WriteAllText(folder["profile.json"], content);
        CommandRun run = folder
            .Command.Run("setpoint", "profile.json", "--exposure", "300")
            .Expect(ExitCodes.UnreadableInput);
        Assert.Contains("profile.json", run.Error, StringComparison.Ordinal);
        Assert.Contains(place, run.Error, StringComparison.Ordinal);
    }
}
