using SensorProfile.Cli.Terminal;
using SensorProfile.Reporting.Answers;
using Spectre.Console;

namespace SensorProfile.Cli.Printing;

/// <summary>Prints an answer for people: in full where it is short or --explain asks for it, otherwise the essentials.</summary>
internal static class AnswerPrinter
{
    /// <summary>Most lines of an answer that is printed in full without being asked for.</summary>
    public const int MaxLines = 15;

    public static void Print(AnswerDocument reply, ResultStream results, bool explain)
    {
        IReadOnlyList<string> lines = FullAnswer.Lines(reply, results.Paper);
        if (!explain && lines.Count > MaxLines)
            lines = ShortAnswer.Lines(reply, results.Paper, MaxLines);
        IReadOnlyList<string> sentence = TableText.Wrapped(reply.Sentence, results.Paper);
        foreach (string line in sentence)
            results.Page.WriteLine(line, new Style(decoration: Decoration.Bold));
        foreach (string line in lines.Skip(sentence.Count))
            results.WriteLine(line);
    }

    public static string Word(Severity severity) =>
        severity switch
        {
            Severity.Refusal => "refused",
            Severity.Warning => "warning",
            _ => "note",
        };

    /// <summary>Whether a finding already appears in the sentence or the reason, so that it is not repeated.</summary>
    public static bool IsSaid(AnswerDocument reply, Finding finding) =>
        reply.Sentence.Contains(finding.Message, StringComparison.Ordinal)
        || reply.Reason.Contains(finding.Message, StringComparison.Ordinal);
}
