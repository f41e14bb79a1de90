using System.Reflection;
using System.Text.RegularExpressions;

namespace SensorProfile.Tests.HouseRules;

/// <summary>
/// Every code of a finding or a refusal has one name (<see cref="FindingCodes"/>) and one entry in the catalogue.
/// </summary>
public sealed partial class FindingCodesTests
{
    private const string Names = "src/SensorProfile/FindingCodes.Names.cs";

    // Words of the same form in the library that are no codes: the open verdict, maps, formats.
    private static readonly HashSet<string> otherWords =
    [
        "cannot-tell",
        "dark-rate",
        "dark-rate-uncertainty",
        "date-time",
        "doubling-uncertainty",
        "flat-field",
        "gain-100-offset-30",
        "non-linear",
        "pedestal-uncertainty",
        "rise-k",
        "two-process",
    ];

    // The two lower projects warn of their files with words of their own, before the library is there.
    private static readonly string[] below = ["src/SensorProfile.Fits/", "src/SensorProfile.Raw/"];

    // "extrapolated" is a heading in tables too.
    private const string Tables = "src/SensorProfile.Reporting/Tables/";

    private static readonly FieldInfo[] names =
    [
        .. typeof(FindingCodes).GetFields(BindingFlags.Public | BindingFlags.Static).Where(f => f.IsLiteral),
    ];

    [Fact]
    public void TheNamesAreThoseOfTheCatalogue() =>
        Assert.Equal(FindingCodes.All.Select(c => c.Code), names.Select(Code).Order(StringComparer.Ordinal));

    /// <summary>"dark-current-carried" is DarkCurrentCarried: who knows the code knows its name.</summary>
    [Fact]
    public void ANameIsItsCode() =>
        Assert.All(names, name =>
            Assert.Equal(
                name.Name,
                string.Concat(Code(name).Split('-').Select(w => char.ToUpperInvariant(w[0]) + w[1..]))
            )
        );

    [Fact]
    public void NoCodeStandsInTheSourceButUnderItsName() =>
        Assert.Empty(
            Literals("src/")
                .Where(l => FindingCodes.Find(l.Word) is not null)
                .Where(l => l.File != Names && !below.Any(p => l.File.StartsWith(p, StringComparison.Ordinal)))
                .Where(l => l.Word != FindingCodes.Extrapolated || !l.File.StartsWith(Tables, StringComparison.Ordinal))
                .Select(l => $"{l.File}: \"{l.Word}\"; write its name in FindingCodes")
        );

    [Fact]
    public void EveryWordThatLooksLikeACodeIsInTheCatalogue()
    {
        string[] missing =
        [
            .. Literals("src/SensorProfile/")
                .Select(l => l.Word)
                .Distinct()
                .Where(w => w.Contains('-') && FindingCodes.Find(w) is null && !otherWords.Contains(w))
                .Order(),
        ];
        Assert.True(
            missing.Length == 0,
            $"Not in src/SensorProfile/findings.json: {string.Join(", ", missing)}. Add a line with meaning, cause and cure "
                + "in alphabetical order and its name to FindingCodes; if it is no code of a finding or refusal, add the "
                + "word to otherWords in this test."
        );
    }

    [Fact]
    public void EveryCodeIsUsed()
    {
        string source = string.Concat(
            SourceFiles().Where(f => SourceTree.Relative(f) != Names).Select(File.ReadAllText)
        );
        HashSet<string> used = [.. NameInUse().Matches(source).Select(m => m.Groups[1].Value)];
        string[] idle = [.. names.Select(f => f.Name).Where(name => !used.Contains(name))];
        Assert.True(
            idle.Length == 0,
            $"Named in FindingCodes but nowhere used: {string.Join(", ", idle)}. Remove name and entry."
        );
    }

    [Fact]
    public void TheCatalogueIsInOrderAndSaysAll()
    {
        string[] written =
        [
            .. CodeOfLine()
                .Matches(File.ReadAllText(Path.Combine(SourceTree.Root, "src", "SensorProfile", "findings.json")))
                .Select(m => m.Groups[1].Value),
        ];
        Assert.Equal(written.Order(StringComparer.Ordinal), written);
        Assert.All(FindingCodes.All, c =>
            Assert.All([c.Meaning, c.Cause, c.Cure], words => Assert.Matches(@"^\S.*[.?]$", words))
        );
    }

    private static string Code(FieldInfo name) => (string)name.GetRawConstantValue()!;

    private static IEnumerable<string> SourceFiles() => SourceTree.SourceFiles().Concat(SourceTree.PageFiles());

    private static IEnumerable<(string File, string Word)> Literals(string folder) =>
        SourceFiles()
            .Select(f => (Path: f, File: SourceTree.Relative(f)))
            .Where(f => f.File.StartsWith(folder, StringComparison.Ordinal))
            .SelectMany(f => File.ReadLines(f.Path).Where(IsCode).Select(line => (f.File, line)))
            .SelectMany(l => Literal().Matches(l.line).Select(m => (l.File, m.Groups[1].Value)));

    private static bool IsCode(string line) => !line.TrimStart().StartsWith("//", StringComparison.Ordinal);

    [GeneratedRegex("\"([a-z0-9]+(?:-[a-z0-9]+)*)\"")]
    private static partial Regex Literal();

    [GeneratedRegex(@"\bFindingCodes\.([A-Z]\w*)")]
    private static partial Regex NameInUse();

    [GeneratedRegex("^  \"([a-z0-9-]+)\":", RegexOptions.Multiline)]
    private static partial Regex CodeOfLine();
}
