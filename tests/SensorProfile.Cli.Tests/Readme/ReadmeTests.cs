using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Readme;

/// <summary>
/// The README never promises what the program does not do: its commands run in order, in one empty folder, and give the
/// answers shown.
/// </summary>
public sealed class ReadmeTests
{
    [Fact]
    public void EveryCommandInTheReadmeGivesTheAnswerShown()
    {
        using TemporaryFolder folder = new();
        new ShownAnswers(folder.Command with { OnItsOwn = true }, "README.md").Check();
    }

    [Fact]
    public void TheReadmeShowsOneAnswerAndHowToGetThere()
    {
        IReadOnlyList<ShownCommand> commands = ShownCommand.In(File.ReadAllText(Checkout.File("README.md")));
        Assert.Contains(commands, c => c.Command.Contains("-- demo", StringComparison.Ordinal));
        Assert.Contains(commands, c => c.Arguments is not null && c.Answer.Length > 0);
    }

    [Fact]
    public void FilesThatSetUpCommandsNameExist()
    {
        foreach (
            ShownCommand shown in ShownCommand
                .In(File.ReadAllText(Checkout.File("README.md")))
                .Where(c => c.Command.StartsWith("dotnet ", StringComparison.Ordinal))
        )
        foreach (
            string word in shown
                .Command.Split(' ')
                .Where(w =>
                    w.StartsWith("src/", StringComparison.Ordinal)
                    || w.StartsWith("tests/", StringComparison.Ordinal)
                    || w.EndsWith(".sln", StringComparison.Ordinal)
                )
        )
            Assert.True(Path.Exists(Checkout.File(word)), $"README line {shown.Line}: {word} does not exist.");
    }
}
