using System.Text;
using SensorProfile.Cli.Printing;
using SensorProfile.Cli.Terminal;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Handbook;

namespace SensorProfile.Cli.Tests.Windows;

/// <summary>A terminal that lacks letters gets those it has; pipes and files get all of them.</summary>
/// <remarks>Code pages: 437 and 850 of the console, 1252 of the windows, ASCII and ISO 8859-1 of locales.</remarks>
public sealed class LettersTests
{
    private const int Ascii = 20127,
        Latin1 = 28591;

    private const string Reading = "Run at −5 °C: 3.3501 ± 0.0070 e⁻, 10⁻³ e⁻/s, cm², 2 × 3½ µm … σ";

    public static TheoryData<int> CodePages => [Ascii, Latin1, 437, 850, 1252];

    [Theory]
    [InlineData(Ascii, "Run at -5 C: 3.3501 +/- 0.0070 e-, 10^-3 e-/s, cm^2, 2 x 3 1/2 um ... sigma")]
    [InlineData(Latin1, "Run at -5 °C: 3.3501 ± 0.0070 e-, 10^-3 e-/s, cm², 2 × 3½ µm ... sigma")]
    [InlineData(437, "Run at -5 °C: 3.3501 ± 0.0070 e-, 10^-3 e-/s, cm², 2 x 3½ µm ... σ")]
    [InlineData(850, "Run at -5 °C: 3.3501 ± 0.0070 e-, 10^-3 e-/s, cm², 2 × 3½ µm ... sigma")]
    [InlineData(1252, "Run at -5 °C: 3.3501 ± 0.0070 e-, 10^-3 e-/s, cm², 2 × 3½ µm … sigma")]
    public void WhatIsMissingIsWrittenWithWhatIsThere(int codePage, string shown)
    {
        Assert.Equal(shown, Of(codePage).Shown(Reading));
        Assert.Equal(shown, Of(codePage).Shown(shown));
    }

    [Fact]
    public void NothingIsMissingInUtf8() => Assert.Equal(Reading, Of(65001).Shown(Reading));

    /// <summary>No word of ours, in answers' findings, handbook or help, ends as a question mark.</summary>
    [Theory, MemberData(nameof(CodePages))]
    public void EverythingThatTheProgramSaysCanBeShown(int codePage)
    {
        Letters letters = Of(codePage);
        string[] said =
        [
            .. HandbookTopics.All.Append(HandbookTopics.Contents).Select(topic => topic.Markdown),
            .. CommandList.Names.Select(name =>
                new SensorProfileCommand().Run([.. name.Split(' '), "--help"]).Expect(ExitCodes.Answered).Output
            ),
        ];
        Assert.True(said.Sum(text => text.Length) > 100_000, "hardly a word was looked at");
        Assert.All(said.SelectMany(text => text.Split('\n')), line =>
            Assert.Equal(line.Count(c => c == '?'), letters.Encoding.GetBytes(letters.Shown(line)).Count(b => b == '?'))
        );
    }

    /// <summary>Columns are laid out for the letters that will stand there.</summary>
    [Fact]
    public void ColumnsStayInLine()
    {
        AnswerTable table = new(
            "",
            ["", ">e⁻ ± e⁻", ""],
            [
                ["read noise", "3.35 ± 0.01", "measured"],
                ["gain", "1", "given"],
            ]
        );
        Assert.Equal(
            [
                "                  e- +/- e-",
                "  read noise  3.35 +/- 0.01  measured",
                "  gain                    1  given",
            ],
            TableText.Lines(table, new Paper(80, Of(Ascii)))
        );
    }

    /// <summary>A terminal gets bytes of its own character set, JSON too, which stays JSON; a pipe gets UTF-8.</summary>
    [Theory]
    [InlineData(true, "\u00B15 -5 e-\n{ \"unit\": \"e-\", \"word\": \"'a'\" }")]
    [InlineData(false, "±5 −5 e⁻\n{ \"unit\": \"e⁻\", \"word\": \"“a”\" }")]
    public void OnlyTheTerminalIsGivenLess(bool isTerminal, string expected)
    {
        MemoryStream output = new();
        ResultStream results = new(() => output, isTerminal, Letters.OfStream(isTerminal, Encoding.Latin1));
        results.WriteLine("±5 −5 e⁻");
        results.WriteRaw("{ \"unit\": \"e⁻\", \"word\": \"“a”\" }");
        results.Send();
        Assert.Equal(expected, (isTerminal ? Encoding.Latin1 : Encoding.UTF8).GetString(output.ToArray()));
    }

    /// <summary>A font is not told to programs: whoever sees boxes asks for ASCII, in texts for people alone.</summary>
    [Fact]
    public void AsciiCanBeAskedFor()
    {
        SensorProfileCommand plain = new()
        {
            OnItsOwn = true,
            Environment = new Dictionary<string, string?> { [Letters.Variable] = "1" },
        };
        Assert.All(
            new[]
            {
                plain.Run("setpoint", "--help"),
                plain.Run("help", "method"),
                plain.Run("shots", "--cooled", "--minutes", "60"),
            },
            run => Assert.DoesNotContain(run.Expect(ExitCodes.Answered).Output, c => c > '~')
        );
        string[] asked = ["shots", "--cooled", "--minutes", "60", "--json"];
        Assert.Equal(
            new SensorProfileCommand { OnItsOwn = true }
                .Run(asked)
                .Output,
            plain.Run(asked).Output
        );
    }

    private static Letters Of(int codePage) =>
        Letters.Of(CodePagesEncodingProvider.Instance.GetEncoding(codePage) ?? Encoding.GetEncoding(codePage));
}
