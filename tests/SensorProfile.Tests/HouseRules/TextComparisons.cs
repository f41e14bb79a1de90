using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SensorProfile.Tests.HouseRules;

/// <summary>A text that is compared with another.</summary>
/// <param name="Place">File and line.</param>
/// <param name="Subject">Name of what is compared: a property, a variable, a method; empty where it has none.</param>
/// <param name="Against">What it is compared with.</param>
/// <param name="Literal">The text of that, when it stands there in quotes.</param>
internal sealed record TextComparison(string Place, string Subject, string Against, string? Literal);

/// <summary>Every comparison of texts in a program, however it is written.</summary>
/// <remarks>
/// <c>==</c> and <c>!=</c>; patterns in <c>is</c>, in properties, in the arms of a switch, old and new; the methods of
/// <see cref="string"/> that compare or search, and <c>Contains</c> of a list of texts.
/// </remarks>
internal static class TextComparisons
{
    private static readonly HashSet<string> comparing =
    [
        "Equals",
        "Contains",
        "StartsWith",
        "EndsWith",
        "IndexOf",
        "LastIndexOf",
        "Compare",
        "CompareOrdinal",
        "CompareTo",
        "SequenceEqual",
    ];

    public static IEnumerable<TextComparison> In(SourceModel source, string folder) =>
        from program in source.Compilations
        from tree in program.SyntaxTrees
        where tree.FilePath.StartsWith(folder, StringComparison.Ordinal)
        let model = program.GetSemanticModel(tree)
        from node in tree.GetRoot().DescendantNodes()
        from pair in Pairs(node, model)
        where IsText(pair.Left, model) || IsText(pair.Right, model)
        from comparison in new[] { Of(tree, pair.Left, pair.Right), Of(tree, pair.Right, pair.Left) }
        select comparison;

    private static TextComparison Of(SyntaxTree tree, ExpressionSyntax subject, ExpressionSyntax against) =>
        new(
            $"{tree.FilePath}:{tree.GetLineSpan(against.Span).StartLinePosition.Line + 1}",
            Name(subject),
            against.ToString(),
            against is LiteralExpressionSyntax { Token.Value: string text } ? text : null
        );

    private static IEnumerable<(ExpressionSyntax Left, ExpressionSyntax Right)> Pairs(
        SyntaxNode node,
        SemanticModel model
    ) =>
        node switch
        {
            BinaryExpressionSyntax both
                when both.IsKind(SyntaxKind.EqualsExpression) || both.IsKind(SyntaxKind.NotEqualsExpression) =>
            [
                (both.Left, both.Right),
            ],
            ConstantPatternSyntax constant when Subject(constant) is { } subject => [(subject, constant.Expression)],
            CaseSwitchLabelSyntax label when Subject(label) is { } subject => [(subject, label.Value)],
            InvocationExpressionSyntax call => Pairs(call, model),
            _ => [],
        };

    private static IEnumerable<(ExpressionSyntax, ExpressionSyntax)> Pairs(
        InvocationExpressionSyntax call,
        SemanticModel model
    )
    {
        if (model.GetSymbolInfo(call).Symbol is not IMethodSymbol method || !comparing.Contains(method.Name))
            return [];
        ExpressionSyntax[] said = [.. call.ArgumentList.Arguments.Select(a => a.Expression)];
        bool onOne = !method.IsStatic || method.ReducedFrom is not null;
        ExpressionSyntax? one =
            onOne && call.Expression is MemberAccessExpressionSyntax member ? member.Expression : null;
        ExpressionSyntax[] all = one is null ? said : [one, .. said];
        // a list is compared text by text
        return all.Length < 2 ? [] : Parts(all[0]).SelectMany(left => Parts(all[1]).Select(right => (left, right)));
    }

    private static IEnumerable<ExpressionSyntax> Parts(ExpressionSyntax expression) =>
        expression switch
        {
            ParenthesizedExpressionSyntax inner => Parts(inner.Expression),
            CastExpressionSyntax cast => Parts(cast.Expression),
            CollectionExpressionSyntax list => list
                .Elements.OfType<ExpressionElementSyntax>()
                .Select(e => e.Expression),
            ImplicitArrayCreationExpressionSyntax array => array.Initializer.Expressions,
            ArrayCreationExpressionSyntax { Initializer: { } filled } => filled.Expressions,
            _ => [expression],
        };

    // what a pattern looks at: the property it names, or what "is" and "switch" were given
    private static ExpressionSyntax? Subject(SyntaxNode pattern)
    {
        foreach (SyntaxNode around in pattern.Ancestors())
            switch (around)
            {
                case SubpatternSyntax { ExpressionColon.Expression: { } property }:
                    return property;
                case IsPatternExpressionSyntax test:
                    return test.Expression;
                case SwitchExpressionSyntax choice:
                    return choice.GoverningExpression;
                case SwitchStatementSyntax choice:
                    return choice.Expression;
                case SubpatternSyntax or StatementSyntax or MemberDeclarationSyntax:
                    return null;
            }
        return null;
    }

    private static string Name(ExpressionSyntax expression) =>
        expression switch
        {
            IdentifierNameSyntax name => name.Identifier.Text,
            MemberAccessExpressionSyntax member => Name(member.Name),
            MemberBindingExpressionSyntax member => Name(member.Name),
            ConditionalAccessExpressionSyntax chain => Name(chain.WhenNotNull),
            InvocationExpressionSyntax call => Name(call.Expression),
            ParenthesizedExpressionSyntax inner => Name(inner.Expression),
            PostfixUnaryExpressionSyntax sure => Name(sure.Operand),
            _ => "",
        };

    private static bool IsText(ExpressionSyntax expression, SemanticModel model) =>
        model.GetTypeInfo(expression).Type?.SpecialType == SpecialType.System_String;
}
