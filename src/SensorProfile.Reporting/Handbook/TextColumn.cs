namespace SensorProfile.Reporting.Handbook;

/// <summary>Where text may stand in lines of a fixed width.</summary>
/// <param name="Width">Columns of a whole line.</param>
/// <param name="First">What stands before the first line: a bullet.</param>
/// <param name="Next">What stands before the others: as many blanks.</param>
internal sealed record TextColumn(int Width, string First, string Next)
{
    private const int Narrowest = 10;

    /// <summary>A column inside this one.</summary>
    public TextColumn Indented(string first, string next) => this with { First = First + first, Next = Next + next };

    /// <summary>Words in lines; a word that is longer than a line has one of its own.</summary>
    public IEnumerable<string> Wrap(string text) =>
        Broken(text, Width - Next.Length).Select((line, i) => ((i == 0 ? First : Next) + line).TrimEnd());

    /// <summary>Words in lines of at most so many columns.</summary>
    public static IEnumerable<string> Broken(string text, int columns)
    {
        int most = Math.Max(Narrowest, columns);
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > most)
            {
                yield return line;
                line = "";
            }
            line = line.Length == 0 ? word : $"{line} {word}";
        }
        yield return line;
    }
}
