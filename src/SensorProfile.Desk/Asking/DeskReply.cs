using SensorProfile.Reporting.Answers;

namespace SensorProfile.Desk.Asking;

/// <summary>What came back for a command.</summary>
/// <param name="Arguments">The command, as it was asked.</param>
/// <param name="ExitCode">As the command line would have ended.</param>
/// <param name="Answer">The answer; null when there is none.</param>
/// <param name="Trouble">Why there is none, in one line; empty when there is.</param>
internal sealed record DeskReply(IReadOnlyList<string> Arguments, int ExitCode, AnswerDocument? Answer, string Trouble)
{
    /// <summary>The curves behind the answer as markup; empty for none.</summary>
    public string Drawing { get; init; } = "";
}
