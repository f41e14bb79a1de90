using System.Text.RegularExpressions;

namespace SensorProfile.Tests.HouseRules;

/// <summary>
/// Every code that the source gives to a finding or a refusal is in the catalogue, and the other way round.
/// </summary>
public sealed partial class FindingCodesTests
{
    // Words of the same form in the library that are no codes: verdicts, measurements, maps, formats.
    private static readonly HashSet<string> otherWords =
    [
        "cannot-tell",
        "common-error",
        "dark-current",
        "dark-flat",
        "dark-rate",
        "dark-rate-uncertainty",
        "date-time",
        "does-not-fit",
        "doubling-uncertainty",
        "flat-field",
        "gain-100-offset-30",
        "hot-pixels",
        "new-hot",
        "non-linear",
        "pedestal-uncertainty",
        "pixel-noise-map",
        "read-noise",
        "rise-k",
        "temperature-law",
        "too-few",
        "two-process",
    ];

    [Fact]
    public void EveryCodeInTheSourceIsInTheCatalogue()
    {
        string[] missing =
        [
            .. Words("SensorProfile").Where(w => FindingCodes.Find(w) is null && !otherWords.Contains(w)).Order(),
        ];
        Assert.True(
            missing.Length == 0,
            $"Not in src/SensorProfile/findings.json: {string.Join(", ", missing)}. Add a line with meaning, cause and cure "
                + "in alphabetical order; if it is no code of a finding or refusal, add the word to otherWords in this test."
        );
    }

    [Fact]
    public void EveryCodeOfTheCatalogueIsUsed()
    {
        HashSet<string> used = [.. Words(""), .. MeasurementLackCodes];
        string[] idle = [.. FindingCodes.All.Select(c => c.Code).Where(c => !used.Contains(c))];
        Assert.True(
            idle.Length == 0,
            $"In src/SensorProfile/findings.json but nowhere in the source: {string.Join(", ", idle)}. Remove the lines, "
                + "unless a code was misspelt in the source."
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

    // What a measurement lacks is said under "lacks-" and its name.
    private static IEnumerable<string> MeasurementLackCodes =>
        new[] { "read-noise", "pixel-noise-map", "gain", "linearity", "dark-current", "temperature-law" }
            .Select(m => "lacks-" + m)
            .Append("extrapolated");

    private static IEnumerable<string> Words(string project) =>
        SourceTree
            .SourceFiles()
            .Where(f =>
                SourceTree
                    .Relative(f)
                    .StartsWith($"src/{project}{(project.Length > 0 ? "/" : "")}", StringComparison.Ordinal)
            )
            .SelectMany(f => Literal().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value))
            .Distinct();

    [GeneratedRegex("\"([a-z0-9]+(?:-[a-z0-9]+)+)\"")]
    private static partial Regex Literal();

    [GeneratedRegex("^  \"([a-z0-9-]+)\":", RegexOptions.Multiline)]
    private static partial Regex CodeOfLine();
}
