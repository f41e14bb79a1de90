using System.Reflection;
using System.Text.RegularExpressions;

namespace SensorProfile.Reporting.Handbook;

/// <summary>The handbook that is part of the program: <c>reports/handbook/*.md</c>.</summary>
/// <remarks>
/// A paragraph that is nothing but a link to the catalogue of findings, or to the table of coverage, stands for its
/// content: so each is written once, and the Markdown reads well where nothing fills it in.
/// </remarks>
internal static partial class HandbookTopics
{
    private const string Resources = "handbook/",
        ContentsName = "README",
        CoverageName = "coverage";

    private static readonly Lazy<IReadOnlyList<HandbookTopic>> _all = new(Read);

    /// <summary>The list of topics, as a page.</summary>
    public static HandbookTopic Contents { get; } = Topic("contents", Resource(ContentsName)!);

    /// <summary>Every topic, in the order of the contents.</summary>
    public static IReadOnlyList<HandbookTopic> All => _all.Value;

    /// <summary>The topic of a name; null when there is none.</summary>
    public static HandbookTopic? Find(string name) =>
        All.FirstOrDefault(topic => topic.Name.Equals(name, StringComparison.OrdinalIgnoreCase));

    /// <summary>What the catalogue says of a code of a finding, as a page; null for another word.</summary>
    public static HandbookTopic? Finding(string code) =>
        FindingCodes.Find(code) is { } known ? Topic(code, $"# {known.Code}\n\n{Text(known)}") : null;

    /// <summary>The codes that <see cref="Finding"/> knows.</summary>
    public static IEnumerable<string> Codes => FindingCodes.All.Select(known => known.Code);

    /// <summary>The Markdown files that are embedded: topics, contents, tables.</summary>
    public static IEnumerable<string> Files =>
        Assembly
            .GetExecutingAssembly()
            .GetManifestResourceNames()
            .Where(name => name.StartsWith(Resources, StringComparison.Ordinal))
            .Select(name => name[Resources.Length..]);

    private static HandbookTopic[] Read() =>
        [
            .. TopicLink()
                .Matches(Contents.Markdown)
                .Select(link => link.Groups["name"].Value)
                .Distinct()
                .Select(name =>
                    Topic(
                        name,
                        Resource(name)
                            ?? throw new InvalidOperationException($"The handbook was built without {name}.md.")
                    )
                ),
        ];

    private static HandbookTopic Topic(string name, string text)
    {
        string markdown = CoverageLine()
            .Replace(FindingsLine().Replace(text, _ => EveryCode()), _ =>
                // its own heading stands one level lower in the page
                Resource(CoverageName) is { } table
                    ? "#" + table
                    : "*The table is not part of this version.*");
        return new HandbookTopic(name, Title().Match(markdown).Groups["title"].Value.Trim(), markdown);
    }

    private static string EveryCode() =>
        string.Join("\n\n", FindingCodes.All.Select(known => $"### {known.Code}\n\n{Text(known)}"));

    private static string Text(FindingCode known) => $"{known.Meaning}\n\n- Cause: {known.Cause}\n- Cure: {known.Cure}";

    private static string? Resource(string name)
    {
        using Stream? stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"{Resources}{name}.md");
        if (stream is null)
            return null;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    [GeneratedRegex(@"^# (?<title>.+)$", RegexOptions.Multiline)]
    private static partial Regex Title();

    [GeneratedRegex(@"\]\((?<name>[a-z-]+)\.md\)")]
    private static partial Regex TopicLink();

    [GeneratedRegex(@"^\[[^\]]+\]\(\S*findings\.json\)$", RegexOptions.Multiline)]
    private static partial Regex FindingsLine();

    [GeneratedRegex(@"^\[[^\]]+\]\(coverage\.md\)$", RegexOptions.Multiline)]
    private static partial Regex CoverageLine();
}
