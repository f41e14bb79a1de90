namespace SensorProfile.Cli.Tests.Readme;

public sealed class ShownCommandTests
{
    [Fact]
    public void CommandsAndAnswersAreFoundInOrder()
    {
        const string Text =
            "# Title\n\n```console\n$ sensorprofile survey night \\\n    --json\nline one\n\nline three\n$ dotnet "
            + "build -c Release\n```\n\n```sh\n$ not this\n```\n\n```console\n$ dotnet run -c Release --project "
            + "src/SensorProfile.Cli -- demo\n```\n";
        IReadOnlyList<ShownCommand> commands = ShownCommand.In(Text);
        Assert.Equal(
            [
                new ShownCommand(4, "sensorprofile survey night --json", "line one\n\nline three\n"),
                new ShownCommand(9, "dotnet build -c Release", ""),
                new ShownCommand(17, "dotnet run -c Release --project src/SensorProfile.Cli -- demo", ""),
            ],
            commands
        );
        Assert.Equal(["survey night --json", null, "demo"], commands.Select(c => c.Arguments));
    }

    [Theory]
    [InlineData("```console\n$ sensorprofile schema\n")]
    [InlineData("```console\nan answer without a question\n```\n")]
    public void ABlockThatIsNotWellFormedIsNotSkipped(string text) =>
        Assert.Throws<InvalidDataException>(() => ShownCommand.In(text));
}
