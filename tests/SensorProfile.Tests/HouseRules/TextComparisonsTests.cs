using System.Text.Json;
using System.Text.RegularExpressions;

namespace SensorProfile.Tests.HouseRules;

/// <summary>Verdicts, causes and codes are compared as what they are, never as texts in quotes.</summary>
public sealed partial class TextComparisonsTests
{
    // Properties and variables that hold a word of a catalogue.
    private static readonly HashSet<string> subjects =
    [
        "Verdict",
        "Outcome",
        "Cause",
        "Code",
        "Quantity",
        "Measurement",
    ];

    // Words that verdicts of answers give to scripts; the plain words among them ("measured") mean other things too.
    private static readonly HashSet<string> verdicts =
    [
        .. typeof(Finding)
            .Assembly.GetTypes()
            .Where(t => t.IsEnum && t.Name.EndsWith("Verdict", StringComparison.Ordinal))
            .SelectMany(Enum.GetNames)
            .Select(JsonNamingPolicy.KebabCaseLower.ConvertName),
    ];

    private static readonly Lazy<TextComparison[]> everywhere = new(() =>
        [.. TextComparisons.In(SourceModel.Everything, "src/")]
    );

    [Fact]
    public void NoVerdictAndNoCodeIsComparedWithATextInQuotes()
    {
        Assert.True(everywhere.Value.Length > 400, $"only {everywhere.Value.Length} comparisons seen");
        Assert.Empty(everywhere.Value.Where(IsWrong).Select(c => $"{c.Place}: {c.Subject} against {c.Against}"));
    }

    /// <summary>A verdict has left its type only in a document, which nothing asks.</summary>
    [Fact]
    public void NoVerdictIsComparedAsAText() =>
        Assert.Empty(
            everywhere.Value.Where(c => c.Subject is "Verdict" or "Outcome").Select(c => $"{c.Place}: {c.Against}")
        );

    /// <summary>The pages of the desk are compiled elsewhere; they are read as they are written.</summary>
    [Fact]
    public void NoPageComparesThemEither() =>
        Assert.Empty(
            SourceTree
                .PageFiles()
                .SelectMany(f => File.ReadLines(f).Select(line => (File: SourceTree.Relative(f), line)))
                .Where(l => InPage().IsMatch(l.line))
                .Select(l => $"{l.File}: {l.line.Trim()}")
        );

    [Theory]
    [InlineData("finding.Code == \"a\"")]
    [InlineData("\"a\" != finding.Code")]
    [InlineData("finding.Code is \"a\" or \"b\"")]
    [InlineData("finding is { Code: \"a\" }")]
    [InlineData("finding.Code switch { \"a\" => true, _ => false }")]
    [InlineData("finding.Code.Equals(\"a\", System.StringComparison.Ordinal)")]
    [InlineData("string.Equals(finding.Code, \"a\", System.StringComparison.Ordinal)")]
    [InlineData("finding.Code.Contains(\"a\", System.StringComparison.Ordinal)")]
    [InlineData("finding.Code.StartsWith(\"a\", System.StringComparison.Ordinal)")]
    [InlineData("System.Linq.Enumerable.Contains(new[] { \"a\", \"b\" }, finding.Code)")]
    [InlineData("((string[])[\"a\", \"b\"]).Contains(finding.Code)")]
    [InlineData("finding.Message == \"does-not-fit\"")]
    [InlineData("finding.Message is not \"frame-left-out\"")]
    public void AComparisonIsFoundHoweverItIsWritten(string test)
    {
        int place = Array.IndexOf(_tests, test);
        Assert.Contains(planted.Value.Where(IsWrong), c => c.Place == $"{Planted}:{place + Head.Split('\n').Length}");
    }

    [Fact]
    public void WhatIsComparedByItsNameIsRight() =>
        Assert.DoesNotContain(planted.Value.Where(IsWrong), c =>
            c.Against.Contains("FindingCodes.", StringComparison.Ordinal)
        );

    private const string Planted = "src/SensorProfile/Screening/PlantedComparisons.cs";
    private const string Head = """
        using System;
        using System.Linq;
        namespace SensorProfile.Screening;
        internal static class PlantedComparisons
        {

        """;

    private static readonly string[] _tests =
    [
        .. typeof(TextComparisonsTests)
            .GetMethod(nameof(AComparisonIsFoundHoweverItIsWritten))!
            .GetCustomAttributesData()
            .Where(a => a.AttributeType == typeof(InlineDataAttribute))
            .Select(a =>
                (string)
                    ((IReadOnlyList<System.Reflection.CustomAttributeTypedArgument>)a.ConstructorArguments[0].Value!)[
                        0
                    ].Value!
            ),
    ];

    private static readonly Lazy<TextComparison[]> planted = new(() =>
    {
        string text =
            Head
            + string.Join('\n', _tests.Select((t, i) => $"    internal static bool Test{i}(Finding finding) => {t};"))
            + "\n    internal static bool Right(Finding finding) => finding.Code is FindingCodes.FrameLeftOut;\n}\n";
        return [.. TextComparisons.In(SourceModel.LibraryWith((Planted, text)), Planted)];
    });

    private static bool IsWrong(TextComparison c) =>
        c.Literal is { } text
        && (
            subjects.Contains(c.Subject)
            || FindingCodes.Find(text) is not null
            || (text.Contains('-') && verdicts.Contains(text))
        );

    [GeneratedRegex(
        """\b(Verdict|Outcome|Cause|Code|Quantity)\s*(==|!=|is|\.(Equals|Contains|StartsWith)\()\s*(not\s+)?["(]"""
    )]
    private static partial Regex InPage();
}
