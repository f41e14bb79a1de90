using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;

namespace SensorProfile.Tests.HouseRules;

/// <summary>What nothing in the source uses and nobody outside can reach is no code of this project.</summary>
public sealed partial class UnusedCodeTests
{
    // by name, as the test prints it
    private static readonly Dictionary<string, string> exceptions = new()
    {
        ["OpenWindows.Watch()"] = "the web server calls it, which is not in this model",
        ["Program"] = "the entry",
        ["PixelClass.RateAt(RateFactors)"] = "the definition that the rates of all classes at once are held to",
        ["SimulatedNight.Render(SimulatedFrame, int, CancellationToken)"] = "a night in memory, for tests",
        ["SimulationTruth.Read(string)"] = "reads back what is written, for tests",
    };

    [Fact]
    public void EveryInternalTypeMethodAndConstantIsUsed()
    {
        SourceModel source = SourceModel.Everything;
        HashSet<ISymbol> targets = new(SymbolEqualityComparer.Default);
        foreach (SymbolUse use in References.All)
        {
            // a method that calls itself, and a type that names itself, are not used by that
            for (
                ISymbol? target = use.Target;
                target is not null and not INamespaceSymbol;
                target = target.ContainingType
            )
                if (!use.From.Contains(target, SymbolEqualityComparer.Default))
                    targets.Add(target);
        }
        // by name, because a program sees what it refers to by symbols of its own
        HashSet<string> used = [.. targets.Select(Id)];
        HashSet<string> inPages =
        [
            .. SourceTree.PageFiles().SelectMany(f => Word().Matches(File.ReadAllText(f)).Select(m => m.Value)),
        ];
        string[] idle =
        [
            .. source
                .Compilations.SelectMany(c => Declared(c.Assembly.GlobalNamespace))
                .Where(s => !IsOpen(s) && !used.Contains(Id(s)) && !inPages.Contains(s.Name))
                .Select(s => $"{s.ToDisplayString(SymbolDisplayFormat.CSharpShortErrorMessageFormat)} {Place(s)}")
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];
        string[] unknown =
        [
            .. idle.Where(i => !exceptions.ContainsKey(i[..i.LastIndexOf(" (", StringComparison.Ordinal)])),
        ];
        Assert.True(unknown.Length == 0, string.Join('\n', unknown));
    }

    private static IEnumerable<ISymbol> Declared(INamespaceOrTypeSymbol place)
    {
        foreach (ISymbol member in place.GetMembers())
        {
            if (!IsOurs(member))
                continue;
            if (member is INamespaceOrTypeSymbol inner)
            {
                if (member is INamedTypeSymbol)
                    yield return member;
                foreach (ISymbol further in Declared(inner))
                    yield return further;
            }
            else if (member is IMethodSymbol method ? IsPlain(method) : member is IFieldSymbol field && IsPlain(field))
                yield return member;
        }
    }

    // files that generators write have no path below src
    private static bool IsOurs(ISymbol symbol) =>
        symbol is INamespaceSymbol
        || symbol.Locations.Any(l => l.SourceTree?.FilePath.StartsWith("src/", StringComparison.Ordinal) == true);

    private static bool IsPlain(IMethodSymbol method) =>
        method is { MethodKind: MethodKind.Ordinary, IsOverride: false, IsImplicitlyDeclared: false, IsAbstract: false }
        && method.PartialImplementationPart is null
        && method.PartialDefinitionPart is null
        && !Implements(method)
        && method.Name is not ("Main" or "Deconstruct" or "Dispose" or "PrintMembers");

    private static bool IsPlain(IFieldSymbol field) =>
        !field.IsImplicitlyDeclared && field.ContainingType.TypeKind != TypeKind.Enum;

    // of an interface that this model knows, or of a library's that it does not: such a first one is taken for a base class
    private static bool Implements(IMethodSymbol method) =>
        method.ContainingType.BaseType?.TypeKind == TypeKind.Error
        || method.ContainingType.AllInterfaces.Any(i => i.TypeKind == TypeKind.Error)
        || method
            .ContainingType.AllInterfaces.SelectMany(i => i.GetMembers())
            .Any(m =>
                SymbolEqualityComparer.Default.Equals(
                    method.ContainingType.FindImplementationForInterfaceMember(m),
                    method
                )
            );

    // a program of its own can call it
    private static bool IsOpen(ISymbol symbol)
    {
        for (ISymbol? s = symbol; s is not null and not INamespaceSymbol; s = s.ContainingType)
            if (s.DeclaredAccessibility is not (Accessibility.Public or Accessibility.Protected))
                return false;
        return true;
    }

    private static string Id(ISymbol symbol) =>
        $"{symbol.ContainingAssembly?.Name} {symbol.OriginalDefinition.GetDocumentationCommentId()}";

    private static string Place(ISymbol symbol)
    {
        FileLinePositionSpan line = symbol.Locations[0].GetLineSpan();
        return $"({line.Path}:{line.StartLinePosition.Line + 1})";
    }

    [GeneratedRegex(@"\b[A-Za-z_]\w+\b")]
    private static partial Regex Word();
}
