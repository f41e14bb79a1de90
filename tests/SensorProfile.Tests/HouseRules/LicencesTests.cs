using System.Text.Json;
using System.Xml.Linq;
using Xunit.Abstractions;

namespace SensorProfile.Tests.HouseRules;

/// <summary>Every package of the lock files has a licence that the project may live with.</summary>
/// <remarks>The licence is what the package itself says (nuspec). A package that names none in words stands in
/// <see cref="readByHand"/>: two hold the text of their licence, three only name a page and stand from memory.</remarks>
public sealed class LicencesTests(ITestOutputHelper output)
{
    private static readonly HashSet<string> allowed =
    [
        "MIT",
        "Apache-2.0",
        "BSD-2-Clause",
        "BSD-3-Clause",
        "MS-PL OR Apache-2.0",
        "MPL-2.0", // axe, which only tests use and nothing ships
    ];

    private static readonly Dictionary<string, string> readByHand = new(StringComparer.OrdinalIgnoreCase)
    {
        ["CommandLineParser"] = "MIT", // text in the package
        ["Microsoft.DotNet.PlatformAbstractions"] = "MIT", // text in the package
        ["XmpCore"] = "BSD-3-Clause", // from memory
        ["BitMiracle.LibTiff.NET"] = "BSD-3-Clause", // from memory
        ["xunit.abstractions"] = "Apache-2.0", // from memory
    };

    [Fact]
    public void EveryPackageHasAnAllowedLicence()
    {
        string store = Store();
        (string Name, string Version)[] packages = [.. Locked().Distinct().Order()];
        Assert.True(packages.Length > 20, "the lock files list hardly a package");
        List<string> wrong = [];
        foreach ((string name, string version) in packages)
        {
            string? licence = LicenceOf(store, name, version);
            output.WriteLine($"{name} {version}: {licence ?? "none stated"}");
            if (licence is null || !allowed.Contains(licence))
                wrong.Add($"{name} {version}: {licence ?? "none stated"}");
        }
        Assert.Empty(wrong);
    }

    [Fact]
    public void WhatIsReadByHandIsStillThere() =>
        Assert.All(readByHand.Keys, name => Assert.Contains(Locked(), p => p.Name == name));

    private static string? LicenceOf(string store, string name, string version)
    {
        string id = name.ToLowerInvariant(),
            nuspec = Path.Combine(store, id, version, id + ".nuspec");
        if (!File.Exists(nuspec))
            return readByHand.GetValueOrDefault(name) ?? $"not restored ({nuspec})";
        XElement? stated = XDocument.Load(nuspec).Descendants().FirstOrDefault(e => e.Name.LocalName == "license");
        return stated?.Attribute("type")?.Value == "expression" ? stated.Value : readByHand.GetValueOrDefault(name);
    }

    private static IEnumerable<(string Name, string Version)> Locked()
    {
        foreach (
            string file in Directory.EnumerateFiles(SourceTree.Root, "packages.lock.json", SearchOption.AllDirectories)
        )
        {
            if (file.Contains("/obj/", StringComparison.Ordinal) || file.Contains("/bin/", StringComparison.Ordinal))
                continue;
            using JsonDocument document = JsonDocument.Parse(File.ReadAllText(file));
            foreach (JsonProperty framework in document.RootElement.GetProperty("dependencies").EnumerateObject())
            foreach (JsonProperty package in framework.Value.EnumerateObject())
                if (package.Value.GetProperty("type").GetString() != "Project")
                    yield return (package.Name, package.Value.GetProperty("resolved").GetString()!);
        }
    }

    private static string Store() =>
        Environment.GetEnvironmentVariable("NUGET_PACKAGES")
        ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
}
