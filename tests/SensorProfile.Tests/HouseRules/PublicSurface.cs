using System.Reflection;
using System.Runtime.CompilerServices;

namespace SensorProfile.Tests.HouseRules;

/// <summary>
/// The public types and members of a program as sorted lines, compared with PublicSurface.txt beside the calling test.
/// </summary>
/// <remarks>A new public member is a line in the review. Every test project compiles this file.</remarks>
internal static class PublicSurface
{
    private const BindingFlags Own =
        BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>
    /// Fails where the surface is not the committed one, and leaves the present one to be copied over it.
    /// </summary>
    public static void AssertCommitted(Assembly program, [CallerFilePath] string test = "")
    {
        string file = Path.Combine(Path.GetDirectoryName(test)!, "PublicSurface.txt");
        string[] committed = File.Exists(file) ? File.ReadAllLines(file) : [];
        string[] actual = [.. program.GetExportedTypes().SelectMany(Lines).Distinct().Order(StringComparer.Ordinal)];
        string proposed = Path.Combine(AppContext.BaseDirectory, "PublicSurface.proposed.txt");
        File.WriteAllLines(proposed, actual);
        string[] difference =
        [
            .. actual.Except(committed).Select(line => "+ " + line),
            .. committed.Except(actual).Select(line => "- " + line),
        ];
        Assert.True(
            difference.Length == 0,
            $"The public surface has changed. If that is meant, copy {proposed} over {file}.\n"
                + string.Join('\n', difference)
        );
    }

    private static IEnumerable<string> Lines(Type type)
    {
        string name = type.FullName!.Replace('+', '.');
        IEnumerable<string> members = type.GetMembers(Own)
            .Where(m => !IsGenerated(m))
            .Select(m =>
                m switch
                {
                    ConstructorInfo c => $"new({Parameters(c)})",
                    MethodInfo method => $"{method.Name}({Parameters(method)}): {Name(method.ReturnType)}",
                    PropertyInfo property => $"{property.Name}: {Name(property.PropertyType)}",
                    FieldInfo field => $"{field.Name}: {Name(field.FieldType)}",
                    _ => m.Name,
                }
            );
        return [name, .. members.Select(m => $"{name}.{m}")];
    }

    // What the compiler adds to records and enumerations says nothing of the design.
    private static bool IsGenerated(MemberInfo member) =>
        member is Type or MethodInfo { IsSpecialName: true } or FieldInfo { IsSpecialName: true }
        || member.Name is "Equals" or "GetHashCode" or "ToString" or "Deconstruct" or "PrintMembers"
        || member.Name.Contains('<', StringComparison.Ordinal);

    private static string Parameters(MethodBase method) =>
        string.Join(", ", method.GetParameters().Select(p => $"{Name(p.ParameterType)} {p.Name}"));

    private static string Name(Type type)
    {
        if (type.IsArray)
            return Name(type.GetElementType()!) + "[]";
        if (!type.IsGenericType)
            return type.Name;
        string own = type.Name.Split('`')[0];
        return $"{own}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>";
    }
}
