using System.Buffers;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Readme;

/// <summary>Runs the commands that a text shows, in order, in one folder, and compares their answers.</summary>
/// <param name="command">Its folder and surroundings.</param>
/// <param name="file">The text, from the project's folder.</param>
/// <remarks>With SENSORPROFILE_REWRITE=1 answers that differ are written into the text, to be looked at in the review.</remarks>
internal sealed class ShownAnswers(SensorProfileCommand command, string file)
{
    private const string RewriteVariable = "SENSORPROFILE_REWRITE";
    private static readonly string[] _setUpPrograms = ["git clone ", "cd ", "dotnet build", "dotnet test", "alias "];
    private static readonly SearchValues<char> _forAShell = SearchValues.Create("|<>\"'~*$;&");
    private readonly List<(ShownCommand Shown, string Output)> differing = [];

    /// <summary>Fails at the first command that does not do what the text says.</summary>
    public void Check()
    {
        string text = File.ReadAllText(Checkout.File(file));
        foreach (ShownCommand shown in ShownCommand.In(text))
        {
            if (shown.Arguments is not { } arguments)
            {
                Assert.True(
                    _setUpPrograms.Any(program => shown.Command.StartsWith(program, StringComparison.Ordinal)),
                    $"{file} line {shown.Line}: nothing here runs '{shown.Command}'."
                );
                continue;
            }
            Compare(shown, Run(arguments));
        }
        if (differing.Count > 0)
            File.WriteAllText(Checkout.File(file), Rewritten(text));
    }

    private void Compare(ShownCommand shown, CommandRun run)
    {
        Assert.True(
            run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell,
            $"{file} line {shown.Line}: '{shown.Command}' ends with {run.ExitCode}: {run.Error}"
        );
        if (shown.Shows(run.Output))
            return;
        Assert.True(
            Environment.GetEnvironmentVariable(RewriteVariable) == "1",
            $"{file} line {shown.Line}: '{shown.Command}' answers\n{run.Output}instead of\n{shown.Answer}"
                + $"({RewriteVariable}=1 writes it into the text; standard error: {run.Error})"
        );
        differing.Add((shown, run.Output));
    }

    /// <summary>A line with pipes needs a shell; the others are answered by the warm process.</summary>
    private CommandRun Run(string arguments) =>
        command.OnItsOwn || arguments.AsSpan().ContainsAny(_forAShell)
            ? command.Shell("$SP " + arguments)
            : command.Run(arguments.Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private string Rewritten(string text)
    {
        List<string> lines = [.. text.ReplaceLineEndings("\n").Split('\n')];
        foreach ((ShownCommand shown, string output) in Enumerable.Reverse(differing))
        {
            lines.RemoveRange(shown.AnswerLine - 1, shown.Answer.Count(c => c == '\n'));
            lines.InsertRange(shown.AnswerLine - 1, shown.Refreshed(output).TrimEnd('\n').Split('\n'));
        }
        return string.Join('\n', lines);
    }
}
