using SensorProfile.Cli.Terminal;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Printing;

/// <summary>
/// The essentials of a long answer within a number of lines: the sentence, the reason, the leading numbers, the table of a
/// list, the worst findings, where the files are, and how to see the rest.
/// </summary>
internal static class ShortAnswer
{
    private const int MaxQuantities = 5;
    private const int FewQuantities = 3; // an answer with no more than these is a list: its table is what was asked for
    private const int MinRows = 2;

    public static IReadOnlyList<string> Lines(AnswerDocument reply, Paper paper, int most)
    {
        List<string> head = [.. TableText.Wrapped(reply.Sentence, paper)];
        IReadOnlyList<string> reason = reply.Reason.Length > 0 ? TableText.Wrapped(reply.Reason, paper) : [];
        string[] files = [.. reply.Lines.Where(line => line.Length > 0).Select(paper.Line)];
        List<string> tail = [.. TableText.Wrapped(More(reply), paper)];
        if (reply.Hints.Count > 0)
            tail.InsertRange(0, TableText.Wrapped(HintText.Sentence(reply.Hints), paper));
        int left = most - head.Count - tail.Count;
        bool Take(List<string> target, IReadOnlyCollection<string> lines)
        {
            if (lines.Count > left)
                return false;
            target.AddRange(lines);
            left -= lines.Count;
            return true;
        }
        Take(head, reason);
        List<string> places = [],
            findings = [],
            middle = [];
        foreach (AnswerTable leading in reply.Tables.Where(t => t.Rows.Count > 0 && t.Leading))
            Take(middle, Beginning(leading, paper, left));
        foreach (string line in files)
            Take(places, [line]);
        foreach (Finding[] alike in Worst(reply).Take(left / 2))
            Take(
                findings,
                TableText.Wrapped(
                    $"{AnswerPrinter.Word(alike[0].Severity)}: {alike[0].Message} {FindingOptions.Label(alike[0], reply.Findings)}"
                        + (alike.Length == 1 ? "" : $" (and {QuantityText.Count(alike.Length - 1)} more like it)"),
                    paper
                )
            );
        Take(middle, Numbers(reply, paper, Math.Min(left, MaxQuantities)));
        bool isList = reply.Quantities.Count(q => q.Value is not null) <= FewQuantities;
        if (isList && reply.Tables.FirstOrDefault(t => t.Rows.Count > 0 && !t.Leading) is { } table)
            Take(middle, Beginning(table, paper, left));
        return [.. head, .. middle, .. findings, .. places, .. tail];
    }

    /// <summary>The worst first; findings of one kind are represented by the first.</summary>
    private static IEnumerable<Finding[]> Worst(AnswerDocument reply) =>
        reply
            .Findings.Where(f => f.Severity > Severity.Note && !AnswerPrinter.IsSaid(reply, f))
            .DistinctBy(f => f.Message)
            .GroupBy(f => (f.Severity, f.Code))
            .OrderByDescending(g => g.Key.Severity)
            .Select(g => g.ToArray());

    private static string[] Titled(AnswerTable table, Paper paper) =>
        [.. table.Title.Length > 0 ? TableText.Wrapped(table.Title, paper) : [], .. TableText.Lines(table, paper)];

    /// <summary>As many leading numbers as fit.</summary>
    private static string[] Numbers(AnswerDocument reply, Paper paper, int room)
    {
        AnswerQuantity[] known = [.. reply.Quantities.Where(q => q.Value is not null)];
        for (int count = Math.Min(room, known.Length); count > 0; count--)
        {
            string[] lines = Titled(QuantityTable.Of(reply, known[..count], methods: false), paper);
            if (lines.Length <= room)
                return lines;
        }
        return [];
    }

    /// <summary>
    /// The whole table, or its first rows and the number of others; nothing when hardly any row would fit.
    /// </summary>
    private static string[] Beginning(AnswerTable table, Paper paper, int room)
    {
        string[] whole = Titled(table, paper);
        if (whole.Length <= room)
            return whole;
        for (int rows = Math.Min(room, table.Rows.Count - 1); rows >= MinRows; rows--)
        {
            string[] lines =
            [
                .. Titled(table with { Rows = [.. table.Rows.Take(rows)] }, paper),
                paper.Line($"  … {QuantityText.Count(table.Rows.Count - rows)} more"),
            ];
            if (lines.Length <= room)
                return lines;
        }
        return [];
    }

    private static string More(AnswerDocument reply)
    {
        int tables = reply.Tables.Count(t => t.Rows.Count > 0 && t.HasHeadings);
        string[] parts =
        [
            .. Counted(tables, "table"),
            .. Counted(reply.Findings.Count, "finding"),
            .. Counted(reply.Cautions.Count, "caution"),
        ];
        return $"More: --explain{(parts.Length > 0 ? $" ({string.Join(", ", parts)})" : "")}.";
    }

    private static IEnumerable<string> Counted(int count, string what) =>
        count == 0 ? []
        : count == 1 ? [$"1 {what}"]
        : [$"{QuantityText.Count(count)} {what}s"];
}
