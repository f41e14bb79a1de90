using SensorProfile.Cli.Terminal;
using SensorProfile.Reporting.Answers;
using Spectre.Console;

namespace SensorProfile.Cli.Printing;

/// <summary>
/// Prints a reply for people: the sentence, the reason, the numbers, the findings, the cautions, and where things
/// stand.
/// </summary>
internal static class AnswerPrinter
{
    public static void Print(AnswerDocument reply, ResultStream results)
    {
        IAnsiConsole page = results.Page;
        Paragraph(page, reply.Sentence, new Style(decoration: Decoration.Bold));
        if (reply.Reason.Length > 0)
            Paragraph(page, reply.Reason);
        if (reply.Quantities.Count > 0)
            Table(page, results.Width, QuantityTable(reply));
        foreach (AnswerTable table in reply.Tables.Where(t => t.Rows.Count > 0))
            Table(page, results.Width, table);
        AnswerTable[] lists =
        [
            AnswerTable.List(
                "Findings",
                reply
                    .Findings.OrderByDescending(f => f.Severity)
                    .Select(f => $"{Word(f.Severity)}: {(Said(reply, f) ? "as said above." : f.Message)} [{f.Code}]")
            ),
            AnswerTable.List("For comparison", reply.RulesOfThumb),
            AnswerTable.List("Take care", reply.Cautions),
        ];
        foreach (AnswerTable list in lists.Where(l => l.Rows.Count > 0))
            Table(page, results.Width, list);
        if (reply.Lines.Count > 0)
            page.WriteLine();
        foreach (string line in reply.Lines)
            results.WriteRaw(line + "\n");
    }

    /// <summary>A finding that is the sentence or stands in the reason of the answer is not said twice.</summary>
    private static bool Said(AnswerDocument reply, Finding finding) =>
        reply.Sentence.Contains(finding.Message, StringComparison.Ordinal)
        || reply.Reason.Contains(finding.Message, StringComparison.Ordinal);

    public static string Word(Severity severity) =>
        severity switch
        {
            Severity.Refusal => "refused",
            Severity.Warning => "warning",
            _ => "note",
        };

    private static AnswerTable QuantityTable(AnswerDocument reply) =>
        new(reply.QuantitiesTitle, ["", ">", "", ""], [.. reply.Quantities.Select(QuantityRow)]);

    private static IReadOnlyList<string> QuantityRow(AnswerQuantity quantity)
    {
        if (quantity.Value is not { } value)
            return [quantity.Label, quantity.Absent, "", ""];
        string interval = quantity.Interval is { } ends ? $"95 %: {End(ends.Low)} … {End(ends.High)}" : value.Method;
        return [quantity.Label, Number(value), QuantityText.Unit(value.Unit), interval];
    }

    private static string Number(Measurement value) =>
        value.StandardUncertainty > 0
            ? QuantityText.Number(value.Value, value.StandardUncertainty)
            : QuantityText.Number(value.Value, 4); // a count, or what follows from a chosen number

    private static string End(double? value) => value is { } end ? QuantityText.Number(end, 3) : "open";

    private static void Table(IAnsiConsole page, int width, AnswerTable table)
    {
        page.WriteLine();
        if (table.Title.Length > 0)
            Paragraph(page, table.Title);
        foreach (string line in TableText.Lines(table, width))
            page.WriteLine(line);
    }

    private static void Paragraph(IAnsiConsole page, string text, Style? style = null) =>
        page.WriteLine(text, style ?? Style.Plain);
}
