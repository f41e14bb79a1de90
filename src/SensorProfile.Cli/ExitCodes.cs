namespace SensorProfile.Cli;

/// <summary>The exit codes that scripts rely on.</summary>
internal static class ExitCodes
{
    public const int Answered = 0;

    /// <summary>The answer is "cannot tell", or a measurement that was asked for could not be made.</summary>
    public const int CannotTell = 1;

    public const int WrongCommandLine = 2;
    public const int UnreadableInput = 3;
    public const int UnwritableOutput = 4;

    /// <summary>A fault of the program itself (EX_SOFTWARE in sysexits.h).</summary>
    public const int ProgramFault = 70;

    /// <summary>128 + SIGINT, the convention of shells.</summary>
    public const int Interrupted = 130;
}
