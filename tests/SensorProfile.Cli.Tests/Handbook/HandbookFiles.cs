using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Handbook;

/// <summary>The Markdown of the handbook as it lies in the project.</summary>
internal static class HandbookFiles
{
    private const string Folder = "reports/handbook";

    /// <summary>Pages, contents and tables, from the project's folder.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        .. Directory
            .EnumerateFiles(Checkout.File(Folder), "*.md")
            .Select(file => $"{Folder}/{Path.GetFileName(file)}")
            .Order(StringComparer.Ordinal),
    ];
}
