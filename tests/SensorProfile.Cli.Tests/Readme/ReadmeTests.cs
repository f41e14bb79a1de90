using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Readme;

/// <summary>
/// The README never promises what the program does not do: its commands run in order, in one empty folder, and give the
/// answers shown.
/// </summary>
public sealed class ReadmeTests
{
    private static readonly string[] SetUpPrograms = ["git clone ", "cd ", "dotnet build", "dotnet test", "alias "];

    [Fact]
    public void EveryCommandInTheReadmeGivesTheAnswerShown()
    {
        using TemporaryFolder folder = new();
        foreach (ShownCommand shown in ShownCommand.In(File.ReadAllText(Checkout.File("README.md"))))
        {
            if (shown.Arguments is not { } arguments)
            {
                Assert.True(
                    SetUpPrograms.Any(program => shown.Command.StartsWith(program, StringComparison.Ordinal)),
                    $"README line {shown.Line}: nothing here runs '{shown.Command}'."
                );
                continue;
            }
            CommandRun run = folder.Command.Shell("$SP " + arguments);
            Assert.True(
                shown.Answer.Length == 0 || shown.Answer == run.Output,
                $"README line {shown.Line}: '{shown.Command}' answers\n{run.Output}instead "
                    + $"of\n{shown.Answer}(standard error: {run.Error})"
            );
            Assert.True(
                run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell,
                $"README line {shown.Line}: '{shown.Command}' ends with {run.ExitCode}: {run.Error}"
            );
        }
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
