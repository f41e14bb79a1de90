using SensorProfile.Simulation;
using Spectre.Console.Cli;

namespace SensorProfile.Cli;

/// <summary>Turns an exception into one plain line and an exit code; a stack trace helps nobody at night.</summary>
internal static class FailureReport
{
    public static int Print(Exception problem, IReadOnlyList<string> arguments, Session session)
    {
        // thrown by parallel work: the first one tells the cause
        if (problem is AggregateException { InnerExceptions: [var only, ..] })
            problem = only;
        if (problem is OperationCanceledException && session.Stop.IsCancellationRequested)
        {
            session.Side.Error("interrupted; nothing unfinished was kept.");
            return ExitCodes.Interrupted;
        }
        // wrapped by the parser while it read a value
        if (problem is CommandAppException { InnerException: CommandFailure failure })
            problem = failure;
        (int code, string message) = Explain(problem, arguments);
        session.Side.Error(message);
        return code;
    }

    private static (int Code, string Message) Explain(Exception problem, IReadOnlyList<string> arguments) =>
        problem switch
        {
            CommandFailure failure => (
                failure.ExitCode,
                failure.ExitCode == ExitCodes.WrongCommandLine ? failure.Message + Hint(arguments) : failure.Message
            ),
            CommandAppException wrong => (
                ExitCodes.WrongCommandLine,
                CommandLineErrors.Explain(wrong, arguments) + Hint(arguments)
            ),
            IOException or UnauthorizedAccessException or CameraDescriptionException => (
                ExitCodes.UnreadableInput,
                OneLine(problem.Message)
            ),
            // a packed program whose drawing library was left behind
            _ when problem.GetBaseException() is DllNotFoundException missing => (
                ExitCodes.ProgramFault,
                $"a library that belongs to the program cannot be loaded ({OneLine(missing.Message).Split(". ")[0]}). "
                    + "Keep the files of the download together; a link to the program may lie elsewhere."
            ),
            _ => (
                ExitCodes.ProgramFault,
                $"a fault of this program, not of your frames ({problem.GetType().Name}: {OneLine(problem.Message)}). "
                    + $"Please report this line, the command and version {CommandLine.Version}."
            ),
        };

    private static string Hint(IReadOnlyList<string> arguments)
    {
        string command = CommandList.NameIn(arguments);
        return $" Try: sensorprofile {(command.Length > 0 ? command + " " : "")}--help";
    }

    internal static string OneLine(string text) =>
        string.Join(
            ' ',
            text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        );
}
