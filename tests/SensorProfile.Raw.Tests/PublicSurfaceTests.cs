using System.Reflection;

namespace SensorProfile.Raw.Tests;

/// <summary>The public types and members are those of PublicSurface.txt: a new one is a line in the review.</summary>
public sealed class PublicSurfaceTests
{
    [Fact]
    public void ThePublicSurfaceIsTheCommittedOne()
    {
        string[] actual =
        [
            .. typeof(RawFile).Assembly.GetExportedTypes().SelectMany(Lines).Order(StringComparer.Ordinal),
        ];
        string[] committed = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "PublicSurface.txt"));
        string[] difference =
        [
            .. actual.Except(committed).Select(line => "+ " + line),
            .. committed.Except(actual).Select(line => "- " + line),
        ];
        Assert.True(
            difference.Length == 0,
            "The public surface differs from PublicSurface.txt:\n" + string.Join('\n', difference)
        );
    }

    private static IEnumerable<string> Lines(Type type)
    {
        const BindingFlags declared =
            BindingFlags.Public
            | BindingFlags.NonPublic
            | BindingFlags.Instance
            | BindingFlags.Static
            | BindingFlags.DeclaredOnly;
        string name = Name(type);
        yield return name;
        foreach (ConstructorInfo constructor in type.GetConstructors(declared).Where(c => c.IsPublic || c.IsFamily))
            yield return $"{name}.new({Parameters(constructor)})";
        foreach (FieldInfo field in type.GetFields(declared).Where(f => f.IsPublic && !f.IsSpecialName))
            yield return $"{name}.{field.Name}: {Name(field.FieldType)}";
        foreach (PropertyInfo property in type.GetProperties(declared).Where(p => p.GetMethod is { IsPublic: true }))
            yield return $"{name}.{property.Name}: {Name(property.PropertyType)}";
        foreach (
            MethodInfo method in type.GetMethods(declared)
                .Where(m => m.IsPublic && !m.IsSpecialName && !m.Name.Contains('<', StringComparison.Ordinal))
        )
            yield return $"{name}.{method.Name}({Parameters(method)}): {Name(method.ReturnType)}";
    }

    private static string Parameters(MethodBase method) =>
        string.Join(
            ", ",
            method.GetParameters().Select(p => $"{Name(p.ParameterType)} {p.Name}{(p.HasDefaultValue ? "?" : "")}")
        );

    private static string Name(Type type)
    {
        if (type.IsByRef)
            return "ref " + Name(type.GetElementType()!);
        if (!type.IsGenericType)
            return
                type.Namespace!.StartsWith("SensorProfile.Raw", StringComparison.Ordinal)
                || type.Namespace!.StartsWith("System", StringComparison.Ordinal)
                ? type.Name
                : type.FullName!;
        string generic = type.Name[..type.Name.IndexOf('`', StringComparison.Ordinal)];
        return $"{generic}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>";
    }
}
