using System.Buffers;
using System.Globalization;
using System.Text;

namespace SensorProfile.Frames;

/// <summary>Accented letters in one piece, whatever the runtime was given to know of languages.</summary>
/// <remarks>
/// Normalization Form C of Unicode Standard Annex 15, by its own data (<c>composition.txt</c>). The runtime's
/// <see cref="string.Normalize(NormalizationForm)"/> leaves everything as it is where it runs without ICU, as the program does.
/// </remarks>
internal static class ComposedLetters
{
    // Hangul syllables are composed by arithmetic (Unicode Standard, section 3.12)
    private const int FirstSyllable = 0xAC00,
        FirstLead = 0x1100,
        Leads = 19,
        FirstVowel = 0x1161,
        Vowels = 21,
        BeforeTail = 0x11A7,
        Tails = 28,
        Syllables = Leads * Vowels * Tails;

    private const char FirstMark = '\u0300'; // what stands before it is composed already

    private static readonly Lazy<Data> data = new(Data.Read);

    /// <summary>The text in Form C.</summary>
    /// <exception cref="ArgumentException">The text is not valid Unicode: half of a surrogate pair stands alone.</exception>
    public static string Compose(string text)
    {
        if (!text.AsSpan().ContainsAnyInRange(FirstMark, char.MaxValue))
            return text;
        List<int> letters = Decompose(text);
        PutMarksInOrder(letters);
        return Join(letters);
    }

    private static List<int> Decompose(string text)
    {
        List<int> letters = new(text.Length);
        for (ReadOnlySpan<char> rest = text; rest.Length > 0; )
        {
            if (Rune.DecodeFromUtf16(rest, out Rune rune, out int used) != OperationStatus.Done)
                throw new ArgumentException("Half of a surrogate pair stands alone.", nameof(text));
            Add(rune.Value, letters);
            rest = rest[used..];
        }
        return letters;
    }

    private static void Add(int letter, List<int> letters)
    {
        int syllable = letter - FirstSyllable;
        if (syllable is >= 0 and < Syllables)
        {
            letters.Add(FirstLead + syllable / (Vowels * Tails));
            letters.Add(FirstVowel + syllable / Tails % Vowels);
            if (syllable % Tails > 0)
                letters.Add(BeforeTail + syllable % Tails);
        }
        else if (data.Value.Parts.TryGetValue(letter, out int[]? parts))
            foreach (int part in parts)
                Add(part, letters);
        else
            letters.Add(letter);
    }

    /// <summary>Marks behind a letter by their class; those of one class keep their order.</summary>
    private static void PutMarksInOrder(List<int> letters)
    {
        for (int i = 1; i < letters.Count; i++)
        for (int j = i; j > 0 && ClassOf(letters[j]) is var own and > 0 && ClassOf(letters[j - 1]) > own; j--)
            (letters[j - 1], letters[j]) = (letters[j], letters[j - 1]);
    }

    /// <summary>A mark joins the letter before it unless a mark of its own class, or of a higher one, stands between.</summary>
    private static string Join(List<int> letters)
    {
        List<int> joined = new(letters.Count);
        int head = -1,
            highest = -1;
        foreach (int letter in letters)
        {
            int own = ClassOf(letter);
            if (head >= 0 && highest < own && Pair(joined[head], letter) is { } composed)
            {
                joined[head] = composed;
                continue;
            }
            (head, highest) = own == 0 ? (joined.Count, -1) : (head, own);
            joined.Add(letter);
        }
        StringBuilder text = new(joined.Count);
        foreach (int letter in joined)
            text.Append(new Rune(letter));
        return text.ToString();
    }

    private static int? Pair(int first, int second)
    {
        int lead = first - FirstLead,
            vowel = second - FirstVowel;
        if (lead is >= 0 and < Leads && vowel is >= 0 and < Vowels)
            return FirstSyllable + (lead * Vowels + vowel) * Tails;
        int syllable = first - FirstSyllable,
            tail = second - BeforeTail;
        if (syllable is >= 0 and < Syllables && syllable % Tails == 0 && tail is > 0 and < Tails)
            return first + tail;
        return data.Value.Composed.TryGetValue((first, second), out int composed) ? composed : null;
    }

    private static int ClassOf(int letter) => data.Value.Classes.GetValueOrDefault(letter);

    private sealed record Data(
        Dictionary<int, int[]> Parts,
        Dictionary<(int First, int Second), int> Composed,
        Dictionary<int, int> Classes
    )
    {
        public static Data Read()
        {
            Data read = new([], [], []);
            using Stream stream = typeof(ComposedLetters).Assembly.GetManifestResourceStream(
                "SensorProfile.Frames.composition.txt"
            )!;
            using StreamReader lines = new(stream);
            while (lines.ReadLine() is { } line)
                if (line.IndexOf('=', StringComparison.Ordinal) is var equals and > 0)
                    read.AddLetter(Hex(line[..equals]), line[(equals + 1)..]);
                else if (line.IndexOf(':', StringComparison.Ordinal) is var colon and > 0 && line[0] != '#')
                    read.AddMarks(line[..colon], int.Parse(line[(colon + 1)..], CultureInfo.InvariantCulture));
            return read;
        }

        /// <summary>"0041 0300", with ! behind it when nothing is composed to this letter.</summary>
        private void AddLetter(int letter, string text)
        {
            int[] parts = [.. text.TrimEnd('!').Split(' ').Select(Hex)];
            Parts[letter] = parts;
            if (!text.EndsWith('!'))
                Composed[(parts[0], parts[1])] = letter;
        }

        /// <summary>The first and the last mark, a hyphen between.</summary>
        private void AddMarks(string range, int markClass)
        {
            string[] ends = range.Split('-');
            for (int mark = Hex(ends[0]); mark <= Hex(ends[1]); mark++)
                Classes[mark] = markClass;
        }

        private static int Hex(string text) => int.Parse(text, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
    }
}
