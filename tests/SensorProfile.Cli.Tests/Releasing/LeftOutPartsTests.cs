using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Releasing;

/// <summary>
/// The packed program leaves out parts of the runtime (<c>SensorProfile.Cli.csproj</c>): none that an assembly of the
/// program refers to, directly or by way of others.
/// </summary>
public sealed class LeftOutPartsTests
{
    [Fact]
    public void NothingRefersToThem()
    {
        Dictionary<string, string> assemblies = Assemblies();
        HashSet<string> reached = Reached("sensorprofile", assemblies);
        Assert.Contains("Microsoft.AspNetCore.Server.Kestrel.Core", reached);
        Assert.Contains("System.Text.Json", reached);
        Regex leftOut = LeftOut();
        string[] names = [.. assemblies.Keys.Where(name => leftOut.IsMatch(name))];
        Assert.True(names.Length > 10, $"{leftOut} leaves hardly anything out");
        Assert.DoesNotContain(names, reached.Contains);
    }

    private static Regex LeftOut()
    {
        string project = File.ReadAllText(Checkout.File("src/SensorProfile.Cli/SensorProfile.Cli.csproj"));
        Match pattern = Regex.Match(project, "<_Unused>(.*?)</_Unused>", RegexOptions.Singleline);
        Assert.True(pattern.Success, "the project leaves nothing out any more");
        return new Regex(pattern.Groups[1].Value.Trim());
    }

    private static HashSet<string> Reached(string first, Dictionary<string, string> assemblies)
    {
        HashSet<string> reached = new(StringComparer.OrdinalIgnoreCase) { first };
        Queue<string> waiting = new(reached);
        while (waiting.TryDequeue(out string? name))
        {
            if (!assemblies.TryGetValue(name, out string? file))
                continue;
            using PEReader image = new(File.OpenRead(file));
            if (!image.HasMetadata)
                continue;
            MetadataReader metadata = image.GetMetadataReader();
            foreach (AssemblyReferenceHandle handle in metadata.AssemblyReferences)
                if (
                    metadata.GetString(metadata.GetAssemblyReference(handle).Name) is var reference
                    && reached.Add(reference)
                )
                    waiting.Enqueue(reference);
        }
        return reached;
    }

    /// <summary>What the program brings, and both shared frameworks.</summary>
    private static Dictionary<string, string> Assemblies()
    {
        string runtime = Path.GetDirectoryName(typeof(object).Assembly.Location)!,
            version = Path.GetFileName(runtime);
        string[] folders =
        [
            Path.GetDirectoryName(Checkout.Built("src/SensorProfile.Cli", "sensorprofile.dll"))!,
            runtime,
            Path.Combine(runtime, "../../Microsoft.AspNetCore.App", version),
        ];
        return folders
            .SelectMany(folder => Directory.GetFiles(folder, "*.dll"))
            .GroupBy(file => Path.GetFileNameWithoutExtension(file), StringComparer.OrdinalIgnoreCase)
            .ToDictionary(group => group.Key, group => group.First(), StringComparer.OrdinalIgnoreCase);
    }
}
