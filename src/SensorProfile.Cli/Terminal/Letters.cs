using System.Text;
using System.Text.RegularExpressions;

namespace SensorProfile.Cli.Terminal;

/// <summary>The letters that a terminal has. What it lacks is written with those it has: − as -, ± as +/-, cm² as cm^2.</summary>
/// <remarks>
/// Files, pipes and nearly every terminal take UTF-8. Left are terminals whose locale or code page says otherwise, and
/// fonts without superscripts, of which no program is told: for them the user sets <see cref="Variable"/>.
/// </remarks>
internal sealed partial class Letters
{
    /// <summary>Set to anything, it asks for ASCII in every text for people; JSON and files stay as they are.</summary>
    public const string Variable = "SENSORPROFILE_ASCII";

    private const string Raised = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻ⁿ",
        RaisedPlain = "0123456789+-n";

    private static readonly Dictionary<char, string> plain = new()
    {
        ['−'] = "-",
        ['–'] = "-",
        ['—'] = "-",
        ['±'] = "+/-",
        ['×'] = "x",
        ['·'] = "*",
        ['÷'] = "/",
        ['…'] = "...",
        ['½'] = "1/2",
        ['√'] = "sqrt ",
        ['≤'] = "<=",
        ['≥'] = ">=",
        ['≈'] = "~",
        ['→'] = "->",
        ['←'] = "<-",
        ['‘'] = "'",
        ['’'] = "'",
        // not ", which would end a string of JSON
        ['“'] = "'",
        ['”'] = "'",
        ['\u00A0'] = " ",
        ['\u202F'] = " ",
        ['\u0304'] = "_mean",
        ['′'] = "'",
        ['§'] = "section ",
        ['µ'] = "u",
        ['μ'] = "u",
        ['Δ'] = "Delta ",
        ['δ'] = "delta",
        ['ε'] = "epsilon",
        ['λ'] = "lambda",
        ['π'] = "pi",
        ['ρ'] = "rho",
        ['σ'] = "sigma",
        ['Σ'] = "Sum ",
        ['τ'] = "tau",
        ['χ'] = "chi",
        ['₀'] = "0",
        ['₁'] = "1",
        ['₂'] = "2",
        ['₃'] = "3",
    };

    private readonly Encoding? known; // null: all of them

    private Letters(Encoding? known, Encoding encoding)
    {
        this.known = known;
        Encoding = encoding;
    }

    /// <summary>Everything, sent as UTF-8.</summary>
    public static Letters All { get; } = new(null, new UTF8Encoding(false));

    /// <summary>
    /// How text is sent. A letter that not even <see cref="Shown"/> could replace, of a file's name, becomes a question mark
    /// here.
    /// </summary>
    public Encoding Encoding { get; }

    /// <summary>Those of a character set; of its number, for the console of Windows gives one that cannot be asked.</summary>
    public static Letters Of(Encoding characters)
    {
        if (characters.CodePage is 65001 or 1200 or 1201 or 12000 or 12001) // UTF-8, 16 and 32
            return All;
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        try
        {
            Encoding known = Plain(characters.CodePage);
            return new Letters(known, known);
        }
        catch (Exception unknown) when (unknown is NotSupportedException or ArgumentException)
        {
            return new Letters(Encoding.ASCII, Encoding.ASCII);
        }
    }

    /// <summary>Those of a stream of this process: a pipe takes all, whatever the terminal beside it lacks.</summary>
    public static Letters OfStream(bool isTerminal, Encoding terminal) =>
        Environment.GetEnvironmentVariable(Variable) is { Length: > 0 }
            ? new Letters(Plain(Encoding.ASCII.CodePage), isTerminal ? Of(terminal).Encoding : All.Encoding)
        : isTerminal ? Of(terminal)
        : All;

    /// <summary>The text in letters that are there.</summary>
    public string Shown(string text)
    {
        if (known is null || Ascii.IsValid(text))
            return text;
        StringBuilder shown = new(
            RaisedWords().Replace(text, word => Has(word.Value) ? word.Value : Lowered(word.Value))
        );
        // before °C the unit says it
        if (!Has("°"))
            shown.Replace("°C", "C").Replace("°", " deg");
        for (int i = shown.Length - 1; i >= 0; i--)
        {
            char letter = shown[i];
            if (char.IsAscii(letter) || Has(letter.ToString()))
                continue;
            string instead = plain.GetValueOrDefault(letter, letter.ToString());
            if (letter == '½' && i > 0 && char.IsAsciiDigit(shown[i - 1]))
                instead = " " + instead; // 3½ is not 31/2
            shown.Remove(i, 1).Insert(i, instead);
        }
        return shown.ToString();
    }

    /// <summary>10⁻³ as 10^-3; a lone sign, as in e⁻, needs no mark.</summary>
    private static string Lowered(string word) =>
        (word is "⁻" or "⁺" ? "" : "^") + string.Concat(word.Select(c => RaisedPlain[Raised.IndexOf(c)]));

    /// <summary>Without the likenesses that a code page would choose by itself: of − it makes a dash or a question mark.</summary>
    private static Encoding Plain(int codePage) =>
        Encoding.GetEncoding(codePage, new EncoderReplacementFallback("?"), new DecoderReplacementFallback("?"));

    /// <summary>Whether it comes back as it was: no letter of these is a question mark by itself.</summary>
    private bool Has(string letters) => known!.GetString(known.GetBytes(letters)) == letters;

    [GeneratedRegex($"[{Raised}]+")]
    private static partial Regex RaisedWords();
}
