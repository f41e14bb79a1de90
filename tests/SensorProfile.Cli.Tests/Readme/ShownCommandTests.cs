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
                new ShownCommand(4, "sensorprofile survey night --json", 6, "line one\n\nline three\n"),
                new ShownCommand(9, "dotnet build -c Release", 10, ""),
                new ShownCommand(17, "dotnet run -c Release --project src/SensorProfile.Cli -- demo", 18, ""),
            ],
            commands
        );
        Assert.Equal(["survey night --json", null, "demo"], commands.Select(c => c.Arguments));
    }

    [Theory]
    [InlineData("", "anything\n", true)]
    [InlineData("one\ntwo\n", "one\ntwo\n", true)]
    [InlineData("one\n", "one\ntwo\n", false)]
    [InlineData("one\n…\n", "one\ntwo\n", true)]
    [InlineData("one\n…\n", "one\n", false)]
    [InlineData("two\n…\n", "one\ntwo\n", false)]
    public void AnAnswerIsShownInWholeOrUpToItsEllipsis(string shown, string output, bool agrees) =>
        Assert.Equal(agrees, new ShownCommand(1, "sensorprofile help", 2, shown).Shows(output));

    [Theory]
    [InlineData("old\n", "one\ntwo\n", "one\ntwo\n")]
    [InlineData("old\n…\n", "one\ntwo\n", "one\n…\n")]
    public void ARefreshedAnswerIsAsLongAsTheOldOne(string shown, string output, string refreshed) =>
        Assert.Equal(refreshed, new ShownCommand(1, "sensorprofile help", 2, shown).Refreshed(output));

    [Theory]
    [InlineData("```console\n$ sensorprofile schema\n")]
    [InlineData("```console\nan answer without a question\n```\n")]
    public void ABlockThatIsNotWellFormedIsNotSkipped(string text) =>
        Assert.Throws<InvalidDataException>(() => ShownCommand.In(text));
}
