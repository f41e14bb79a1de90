using System.Globalization;
using System.Reflection;
using System.Text;

namespace SensorProfile.Tests.HouseRules;

/// <summary>The public surface is committed: a new public member is a line in the review.</summary>
/// <remarks>
/// When the change is meant, write the text the failing test left beside the test assembly over PublicSurface.txt.
/// </remarks>
public sealed class PublicSurfaceTests
{
    [Fact]
    public void TheLibraryShowsWhatIsCommitted()
    {
        string actual = SurfaceOf(typeof(Measurement).Assembly);
        string committedFile = Path.Combine(
            SourceTree.Root,
            "tests",
            "SensorProfile.Tests",
            "HouseRules",
            "PublicSurface.txt"
        );
        string committed = File.Exists(committedFile) ? File.ReadAllText(committedFile) : "";
        if (actual != committed)
            File.WriteAllText(Path.Combine(AppContext.BaseDirectory, "PublicSurface.actual.txt"), actual);
        Assert.Equal(committed, actual);
    }

    private static string SurfaceOf(Assembly assembly)
    {
        var lines = new List<string>();
        foreach (Type type in assembly.GetExportedTypes())
        {
            string name = type.FullName!.Replace('+', '.');
            lines.Add(name);
            const BindingFlags own =
                BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
            foreach (MemberInfo member in type.GetMembers(own))
            {
                if (member is MethodInfo { IsSpecialName: true } or Type || member.Name.Contains('<'))
                    continue;
                if (
                    member is MethodInfo
                    {
                        Name: "Equals" or "GetHashCode" or "ToString" or "Deconstruct" or "PrintMembers"
                    }
                )
                    continue;
                lines.Add($"{name}: {member}");
            }
        }
        lines.Sort(StringComparer.Ordinal);
        var text = new StringBuilder();
        foreach (string line in lines.Distinct())
            text.Append(CultureInfo.InvariantCulture, $"{line}\n");
        return text.ToString();
    }
}
