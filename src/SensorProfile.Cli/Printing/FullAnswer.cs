using SensorProfile.Cli.Terminal;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Printing;

/// <summary>
/// A whole answer: sentence, reason, numbers, tables, findings, cautions, and where the files
/// are.
/// </summary>
internal static class FullAnswer
{
    public static IReadOnlyList<string> Lines(AnswerDocument reply, Paper paper)
    {
        List<string> lines = [.. TableText.Wrapped(reply.Sentence, paper)];
        if (reply.Reason.Length > 0)
            lines.AddRange(TableText.Wrapped(reply.Reason, paper));
        AnswerTable[] tables =
        [
            QuantityTable.Of(reply, reply.Quantities),
            .. reply.Tables,
            AnswerTable.List("Assumed", reply.Assumptions.Select(a => $"{a.Text} ({EnumWord.Of(a.Source)})")),
            AnswerTable.List(
                "Findings",
                reply
                    .Findings.OrderByDescending(f => f.Severity)
                    .Select(f =>
                        $"{AnswerPrinter.Word(f.Severity)}: "
                        + $"{(AnswerPrinter.IsSaid(reply, f) ? "as said above." : f.Message)} {FindingOptions.Label(f, reply.Findings)}"
                    )
            ),
            AnswerTable.List("For comparison", reply.RulesOfThumb),
            AnswerTable.List("Take care", reply.Cautions),
            AnswerTable.List("To make it yours", HintText.Each(reply.Hints)),
        ];
        foreach (AnswerTable table in tables.Where(t => t.Rows.Count > 0))
        {
            lines.Add("");
            if (table.Title.Length > 0)
                lines.AddRange(TableText.Wrapped(table.Title, paper));
            lines.AddRange(TableText.Lines(table, paper));
        }
        if (reply.Lines.Count > 0)
            lines.AddRange(["", .. reply.Lines.Select(paper.Line)]);
        return lines;
    }
}
