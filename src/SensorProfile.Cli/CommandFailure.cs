namespace SensorProfile.Cli;

/// <summary>Ends a command with one line on standard error and an exit code.</summary>
internal sealed class CommandFailure(int exitCode, string message, Exception? inner = null) : Exception(message, inner)
{
    public int ExitCode => exitCode;

    public static CommandFailure WrongCommandLine(string message, Exception? inner = null) =>
        new(ExitCodes.WrongCommandLine, message, inner);

    public static CommandFailure UnreadableInput(string message, Exception? inner = null) =>
        new(ExitCodes.UnreadableInput, message, inner);

    public static CommandFailure UnwritableOutput(string message, Exception? inner = null) =>
        new(ExitCodes.UnwritableOutput, message, inner);
}
