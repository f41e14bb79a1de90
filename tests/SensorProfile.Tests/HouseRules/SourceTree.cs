using System.Runtime.CompilerServices;

namespace SensorProfile.Tests.HouseRules;

/// <summary>The project's own source, found from where this file was compiled.</summary>
internal static class SourceTree
{
    public static string Root { get; } = FindRoot();

    public static IEnumerable<string> SourceFiles() => CodeUnder("src");

    /// <summary>The pages of the desk.</summary>
    public static IEnumerable<string> PageFiles() => CodeUnder("src", "*.razor");

    public static IEnumerable<string> TestFiles() => CodeUnder("tests");

    public static string Relative(string file) => Path.GetRelativePath(Root, file).Replace('\\', '/');

    private static IEnumerable<string> CodeUnder(string folder, string pattern = "*.cs") =>
        Directory
            .EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories)
            .Where(f => !f.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"))
            .Order(StringComparer.Ordinal);

    private static string FindRoot([CallerFilePath] string here = "")
    {
        for (DirectoryInfo? d = new FileInfo(here).Directory; d is not null; d = d.Parent)
            if (File.Exists(Path.Combine(d.FullName, "SensorProfile.sln")))
                return d.FullName;
        throw new DirectoryNotFoundException("the folder with SensorProfile.sln was not found above " + here);
    }
}
