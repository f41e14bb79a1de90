using SensorProfile.Reporting.Answers;

namespace SensorProfile.Desk.Asking;

/// <summary>The reply to a command.</summary>
/// <param name="Arguments">The command, as it was asked.</param>
/// <param name="ExitCode">The exit code that the command line would have returned.</param>
/// <param name="Answer">The answer; null when there is none.</param>
/// <param name="Trouble">Why there is no answer, in one line; empty when there is one.</param>
internal sealed record DeskReply(IReadOnlyList<string> Arguments, int ExitCode, AnswerDocument? Answer, string Trouble)
{
    /// <summary>The curves behind the answer, as markup; empty for none.</summary>
    public string Drawing { get; init; } = "";
}
