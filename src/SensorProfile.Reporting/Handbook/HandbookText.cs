using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace SensorProfile.Reporting.Handbook;

/// <summary>A topic of the handbook as lines of plain text, for terminals and pipes.</summary>
internal sealed class HandbookText
{
    private readonly List<string> lines = [];

    private readonly Func<string, string> shown;

    private HandbookText(Func<string, string> shown) => this.shown = shown;

    /// <summary>The lines.</summary>
    /// <param name="topic">The topic.</param>
    /// <param name="width">Columns that a line may take; commands and equations keep their lines whatever it is.</param>
    /// <param name="shown">Replaces letters that the terminal lacks; null for none.</param>
    public static IReadOnlyList<string> Lines(HandbookTopic topic, int width, Func<string, string>? shown = null)
    {
        var text = new HandbookText(shown ?? (text => text));
        foreach (Block block in HandbookMarkdown.Parse(topic))
            text.Add(block, new TextColumn(width, "", ""), tight: false);
        while (text.lines is [.., ""])
            text.lines.RemoveAt(text.lines.Count - 1);
        return text.lines;
    }

    private void Add(Block block, TextColumn column, bool tight)
    {
        switch (block)
        {
            case HeadingBlock heading:
                AddHeading(Words(heading.Inline), heading.Level, column);
                break;
            case ParagraphBlock paragraph:
                lines.AddRange(column.Wrap(Words(paragraph.Inline)));
                break;
            case CodeBlock code:
                lines.AddRange(
                    shown(code.Lines.ToString()).Split('\n').Select(line => $"{column.Next}    {line}".TrimEnd())
                );
                break;
            case ListBlock list:
                AddList(list, column);
                break;
            case QuoteBlock quote:
                foreach (Block part in quote)
                    Add(part, column.Indented("| ", "| "), tight: false);
                return;
            case Table table:
                lines.AddRange(
                    TextTable.Lines(
                        [
                            .. table
                                .OfType<TableRow>()
                                .Select(row => (IReadOnlyList<string>)[.. row.OfType<TableCell>().Select(Cell)]),
                        ],
                        column
                    )
                );
                break;
            case LinkReferenceDefinitionGroup:
                return;
            default:
                throw new InvalidOperationException(
                    $"The handbook has a {block.GetType().Name}, which no terminal shows."
                );
        }
        if (!tight)
            lines.Add("");
    }

    private void AddHeading(string words, int level, TextColumn column)
    {
        if (level == 2)
            lines.Add("");
        lines.AddRange(column.Wrap(words));
        if (level < 3)
            lines.Add(new string(level == 1 ? '=' : '-', Math.Min(words.Length, column.Width)));
    }

    private void AddList(ListBlock list, TextColumn column)
    {
        int number = int.TryParse(list.OrderedStart, out int first) ? first : 1;
        foreach (ListItemBlock item in list.OfType<ListItemBlock>())
        {
            string mark = list.IsOrdered ? $"{number++}. " : "- ";
            TextColumn place = column.Indented("  " + mark, new string(' ', mark.Length + 2));
            foreach (Block part in item)
            {
                Add(part, place, tight: !list.IsLoose);
                place = place with { First = place.Next };
            }
        }
    }

    private string Cell(TableCell cell) =>
        string.Join(' ', cell.OfType<ParagraphBlock>().Select(part => Words(part.Inline)));

    private string Words(ContainerInline? inlines) => inlines is null ? "" : string.Concat(inlines.Select(Words));

    private string Words(Inline inline) =>
        inline switch
        {
            LiteralInline literal => shown(literal.Content.ToString()),
            // a command of several words would run into the sentence
            CodeInline code => shown(
                code.Content.Contains(' ', StringComparison.Ordinal) ? $"'{code.Content}'" : code.Content
            ),
            LineBreakInline => " ",
            LinkInline link => Words((ContainerInline)link) + Target(link.Url ?? ""),
            AutolinkInline address => address.Url,
            ContainerInline container => Words(container),
            _ => throw new InvalidOperationException($"The handbook has a {inline.GetType().Name} in a line."),
        };

    private static string Target(string url) =>
        HandbookMarkdown.Target(url) switch
        {
            { Web: { } web } => $" <{web}>",
            { Topic: { Length: > 0 } topic } => $" ({topic})",
            _ => "",
        };
}
