using System.Reflection;

namespace SensorProfile.Reporting.Tests;

public class PublicSurfaceTests
{
    [Fact]
    public void ThePublicSurfaceIsTheOneThatWasReviewed()
    {
        string actual =
            string.Join(
                '\n',
                typeof(ReportWriter)
                    .Assembly.GetExportedTypes()
                    .OrderBy(type => type.FullName, StringComparer.Ordinal)
                    .SelectMany(Describe)
            ) + "\n";
        string proposal = Path.Combine(AppContext.BaseDirectory, "PublicSurface.proposed.txt");
        File.WriteAllText(proposal, actual);
        Assert.True(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "PublicSurface.txt")).ReplaceLineEndings("\n")
                == actual,
            $"The public surface has changed: review {proposal} and copy it to tests/SensorProfile.Reporting.Tests/PublicSurface.txt."
        );
    }

    private static IEnumerable<string> Describe(Type type)
    {
        const BindingFlags Own =
            BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        IEnumerable<string> constructors = type.GetConstructors(Own).Select(c => $"  new({Parameters(c)})");
        IEnumerable<string> members = type.GetMembers(Own)
            .Where(member => !Generated(member))
            .Select(member =>
                member switch
                {
                    PropertyInfo p =>
                        $"  {Name(p.PropertyType)} {p.Name} {{ {(p.CanRead ? "get; " : "")}{(p.CanWrite ? "init; " : "")}}}",
                    MethodInfo m => $"  {Name(m.ReturnType)} {m.Name}({Parameters(m)})",
                    _ => $"  {member.MemberType} {member.Name}",
                }
            );
        return [type.FullName!, .. constructors.Concat(members).Order(StringComparer.Ordinal)];
    }

    /// <summary>What the compiler adds to a record says nothing of the design.</summary>
    private static bool Generated(MemberInfo member) =>
        member is ConstructorInfo or MethodInfo { IsSpecialName: true }
        || member.Name is "Equals" or "GetHashCode" or "ToString" or "Deconstruct" or "<Clone>$";

    private static string Parameters(MethodBase method) =>
        string.Join(", ", method.GetParameters().Select(p => $"{Name(p.ParameterType)} {p.Name}"));

    private static string Name(Type type) =>
        type.IsGenericType
            ? $"{type.Name[..type.Name.IndexOf('`', StringComparison.Ordinal)]}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>"
            : type.Name;
}
