namespace SensorProfile.Reporting.Drawing;

/// <summary>Breaks text into lines that fit a width.</summary>
internal static class TextWrap
{
    /// <summary>
    /// The lines; words that are too long on their own (file names, digests) are cut where they must.
    /// </summary>
    /// <param name="text">Plain text.</param>
    /// <param name="size">Font size.</param>
    /// <param name="bold">Bold or regular.</param>
    /// <param name="width">Width that every line fits into.</param>
    public static IReadOnlyList<string> Lines(string text, double size, bool bold, double width)
    {
        var lines = new List<string>();
        string line = "";
        foreach (
            string word in NoBreak
                .Apply(text)
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .SelectMany(word => Cut(word, size, bold, width))
        )
        {
            string longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && ReportFonts.Width(longer, size, bold) > width)
            {
                lines.Add(line);
                longer = word;
            }
            line = longer;
        }
        if (line.Length > 0 || lines.Count == 0)
            lines.Add(line);
        return lines;
    }

    private static IEnumerable<string> Cut(string word, double size, bool bold, double width)
    {
        while (word.Length > 1 && ReportFonts.Width(word, size, bold) > width)
        {
            int fitting = 1;
            while (fitting < word.Length - 1 && ReportFonts.Width(word[..(fitting + 1)], size, bold) <= width)
                fitting++;
            if (char.IsHighSurrogate(word[fitting - 1]) && fitting < word.Length)
                fitting++;
            yield return word[..fitting];
            word = word[fitting..];
        }
        yield return word;
    }
}
