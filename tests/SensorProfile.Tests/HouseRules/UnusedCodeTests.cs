using Microsoft.CodeAnalysis;

namespace SensorProfile.Tests.HouseRules;

/// <summary>Nothing in src that nothing in src reaches: code that only tests call is no part of the program.</summary>
public sealed class UnusedCodeTests
{
    // Doors for programs of others, and what the tests of another room need to look inside one.
    private static readonly string[] _doors =
    [
        "SensorProfile.Characterisation.Characteriser.Run", // frames in memory: the program in DEVELOPERS.md
        "SensorProfile.Characterisation.FrameInMemory",
        "SensorProfile.FindingCode", // the catalogue of codes, for scripts
        "SensorProfile.Fits.FitsHdu.ReadRows", // every pixel type of the standard
        "SensorProfile.Raw.RawBlackLevel.At",
        "SensorProfile.Raw.RawColourFilter.At",
        "SensorProfile.Raw.RawFile.Park", // a program that holds many files open
        "SensorProfile.Raw.RawFile.ReadSensorRows",
        "SensorProfile.Raw.Mosaics.MosaicRows.Park",
        "SensorProfile.Raw.Mosaics.SegmentBytes.Park",
        "SensorProfile.Raw.Mosaics.SegmentDecoder.Park",
        "SensorProfile.Simulation.SimulatedNight.Render", // frames whose truth is known, without a file
        "SensorProfile.Simulation.Truth.SimulationTruth.Read",
    ];

    [Fact]
    public void EveryTypeAndMethodIsReachedFromTheProgram()
    {
        SourceModel source = SourceModel.Everything;
        ISymbol[] declared = [.. source.Compilations.SelectMany(c => Declared(c.Assembly.GlobalNamespace))];
        Assert.True(declared.Length > 3000, $"only {declared.Length} types and members seen");
        HashSet<string> reached = Reached(declared, References.In(source, "src/"));
        Assert.Empty(
            declared
                .Where(d => !reached.Contains(Key(d)) && Counts(d))
                .Where(d => d.ContainingType is null || reached.Contains(Key(d.ContainingType)))
                .Select(d => $"{d.Locations[0].GetLineSpan().Path}: nothing in src calls {d.ToDisplayString()}")
        );
    }

    private static HashSet<string> Reached(IReadOnlyList<ISymbol> declared, IEnumerable<SymbolUse> uses)
    {
        ILookup<string, ISymbol> targets = uses.ToLookup(u => u.From.Count == 0 ? "" : Owner(u.From[0]), u => u.Target);
        ILookup<string, ISymbol> members = declared
            .Where(d => d.ContainingType is not null)
            .ToLookup(d => Key(d.ContainingType));
        var reached = new HashSet<string>();
        var open = new Stack<ISymbol>();
        foreach (ISymbol start in targets[""].Concat(declared.Where(IsStart)))
            Reach(start);
        while (open.TryPop(out ISymbol? symbol))
        {
            foreach (ISymbol target in targets[Key(symbol)])
                Reach(target);
            if (symbol is not INamedTypeSymbol type)
            {
                Reach(symbol.ContainingType);
                continue;
            }
            foreach (ISymbol? of in type.Interfaces.Append(type.BaseType).Append(type.ContainingType))
                Reach(of);
            foreach (ISymbol member in members[Key(type)].Where(IsBound))
                Reach(member);
        }
        return reached;

        void Reach(ISymbol? symbol)
        {
            if (symbol is not null && reached.Add(Key(symbol)))
                open.Push(symbol.OriginalDefinition);
        }
    }

    // Constructors and the like come with their type.
    private static string Owner(ISymbol from) =>
        from is IMethodSymbol { MethodKind: not MethodKind.Ordinary } ? Key(from.ContainingType) : Key(from);

    private static bool IsStart(ISymbol symbol) =>
        symbol.Name is "Main" or "<Main>$"
        || _doors.Any(door => symbol.ToDisplayString().StartsWith(door, StringComparison.Ordinal));

    // Called through a base type, an interface or the language.
    private static bool IsBound(ISymbol member) =>
        member.IsOverride
        || member.ContainingType.TypeKind == TypeKind.Interface
        || member.Name is "GetEnumerator" or "Deconstruct" or "Dispose"
        || member is IMethodSymbol { ExplicitInterfaceImplementations.Length: > 0 }
        || member
            .ContainingType.AllInterfaces.SelectMany(i => i.GetMembers())
            .Any(m =>
                SymbolEqualityComparer.Default.Equals(
                    member.ContainingType.FindImplementationForInterfaceMember(m),
                    member
                )
            );

    private static bool Counts(ISymbol symbol) =>
        symbol is INamedTypeSymbol or IMethodSymbol { MethodKind: MethodKind.Ordinary };

    private static IEnumerable<ISymbol> Declared(INamespaceOrTypeSymbol room) =>
        room.GetMembers()
            .SelectMany(m =>
                m is INamespaceSymbol inner ? Declared(inner)
                : m is INamedTypeSymbol type ? Declared(type).Prepend(type)
                : [m]
            )
            .Where(s => !s.IsImplicitlyDeclared && s.Locations.Any(IsWritten));

    private static bool IsWritten(Location place) =>
        place.SourceTree is { FilePath: var file }
        && file.StartsWith("src/", StringComparison.Ordinal)
        && !file.EndsWith(".g.cs", StringComparison.Ordinal);

    private static string Key(ISymbol symbol) =>
        $"{symbol.ContainingAssembly?.Name}|{symbol.OriginalDefinition.GetDocumentationCommentId()}";
}
