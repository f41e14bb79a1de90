using SensorProfile.Cli.Terminal;
using SensorProfile.Reporting.Answers;
using Spectre.Console;

namespace SensorProfile.Cli.Printing;

/// <summary>Prints an answer for people: all of it where that is short or asked for, else what matters most.</summary>
internal static class AnswerPrinter
{
    /// <summary>A longer answer is cut to what matters, unless all of it is asked for.</summary>
    public const int MaxLines = 15;

    public static void Print(AnswerDocument reply, ResultStream results, bool explain)
    {
        IReadOnlyList<string> lines = FullAnswer.Lines(reply, results.Width);
        if (!explain && lines.Count > MaxLines)
            lines = ShortAnswer.Lines(reply, results.Width, MaxLines);
        IReadOnlyList<string> sentence = TableText.Wrapped(reply.Sentence, results.Width);
        foreach (string line in sentence)
            results.Page.WriteLine(line, new Style(decoration: Decoration.Bold));
        foreach (string line in lines.Skip(sentence.Count))
            results.WriteRaw(line + "\n");
    }

    public static string Word(Severity severity) =>
        severity switch
        {
            Severity.Refusal => "refused",
            Severity.Warning => "warning",
            _ => "note",
        };

    /// <summary>A finding that is the sentence or stands in the reason of the answer is not said twice.</summary>
    public static bool IsSaid(AnswerDocument reply, Finding finding) =>
        reply.Sentence.Contains(finding.Message, StringComparison.Ordinal)
        || reply.Reason.Contains(finding.Message, StringComparison.Ordinal);
}
