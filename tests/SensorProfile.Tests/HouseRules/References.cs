using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SensorProfile.Tests.HouseRules;

/// <summary>One use of a symbol of the project's own source.</summary>
/// <param name="File">File that uses it, from the project's root.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="From">The member that uses it and the types around it, innermost first; none in top-level
/// statements.</param>
/// <param name="Target">What is used: type, method, property, field, constant.</param>
internal sealed record SymbolUse(string File, int Line, IReadOnlyList<ISymbol> From, ISymbol Target);

/// <summary>Every use of the project's own symbols in its code, as the compiler resolves them.</summary>
/// <remarks>
/// Counted are names however they are written (imported, fully qualified, in <c>nameof</c>, constants), the constructor
/// of
/// <c>new(…)</c>, conversions and operators, and the type of every expression. A <c>using</c> and a reference in a
/// comment are no use.
/// </remarks>
internal static class References
{
    private static readonly Lazy<IReadOnlyList<SymbolUse>> _all = new(() => In(SourceModel.Everything, "src/"));

    /// <summary>Every use in all of src: one walk for all rules, because it takes longest.</summary>
    public static IReadOnlyList<SymbolUse> All => _all.Value;

    /// <param name="source">The source.</param>
    /// <param name="folder">Only uses in files whose path starts with this.</param>
    public static IReadOnlyList<SymbolUse> In(SourceModel source, string folder) =>
        [
            .. source
                .Compilations.SelectMany(c => c.SyntaxTrees.Select(tree => (Compilation: c, Tree: tree)))
                .Where(t => t.Tree.FilePath.StartsWith(folder, StringComparison.Ordinal))
                .SelectMany(t => In(t.Tree, t.Compilation.GetSemanticModel(t.Tree))),
        ];

    private static IEnumerable<SymbolUse> In(SyntaxTree tree, SemanticModel model)
    {
        // one list for all uses in a member: to ask the compiler anew for each use takes most of the time
        Dictionary<SyntaxNode, ISymbol[]> around = [];
        foreach (SyntaxNode node in tree.GetRoot().DescendantNodes(n => n is not UsingDirectiveSyntax))
        {
            foreach (ISymbol target in Targets(node, model).Where(IsOurs).Distinct(SymbolEqualityComparer.Default))
            {
                int line = tree.GetLineSpan(node.Span).StartLinePosition.Line + 1;
                SyntaxNode member = node.FirstAncestorOrSelf<MemberDeclarationSyntax>() ?? node;
                if (!around.TryGetValue(member, out ISymbol[]? members))
                    around[member] = members = MembersAround(member, model);
                yield return new SymbolUse(tree.FilePath, line, members, target);
            }
        }
    }

    private static IEnumerable<ISymbol> Targets(SyntaxNode node, SemanticModel model)
    {
        SymbolInfo named = node is ExpressionSyntax or ConstructorInitializerSyntax or AttributeSyntax
            ? model.GetSymbolInfo(node)
            : default;
        IEnumerable<ISymbol?> all = [named.Symbol, .. named.CandidateSymbols];
        if (node is ExpressionSyntax expression and not TypeSyntax)
            all = [.. all, .. Types(model.GetTypeInfo(expression).Type), model.GetConversion(expression).MethodSymbol];
        return all.OfType<ISymbol>().Select(Definition);
    }

    private static IEnumerable<ISymbol> Types(ITypeSymbol? type) =>
        type switch
        {
            null => [],
            IArrayTypeSymbol array => Types(array.ElementType),
            INamedTypeSymbol named => [named, .. named.TypeArguments.SelectMany(Types)],
            _ => [],
        };

    private static ISymbol Definition(ISymbol symbol) =>
        symbol is IMethodSymbol { ReducedFrom: { } extension }
            ? extension.OriginalDefinition
            : symbol.OriginalDefinition;

    private static bool IsOurs(ISymbol symbol) =>
        symbol is INamedTypeSymbol or IMethodSymbol or IPropertySymbol or IFieldSymbol or IEventSymbol
        && symbol.Locations.Any(l => l.IsInSource);

    private static ISymbol[] MembersAround(SyntaxNode node, SemanticModel model) =>
        [
            .. node.AncestorsAndSelf()
                .OfType<MemberDeclarationSyntax>()
                .Select(m => m is BaseFieldDeclarationSyntax field ? field.Declaration.Variables[0] : (SyntaxNode)m)
                .Select(m => model.GetDeclaredSymbol(m))
                .OfType<ISymbol>(),
        ];
}
