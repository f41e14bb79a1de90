using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SensorProfile.Tests.HouseRules;

/// <summary>The names of quantities, which scripts rely on, stand in one place (<see cref="QuantityNames"/>).</summary>
public sealed partial class QuantityNamesTests
{
    private const string Home = "src/SensorProfile/QuantityNames.cs";

    // A description of a camera to simulate has members of its own, some of the same name.
    private const string Simulation = "src/SensorProfile.Simulation/";

    private static readonly FieldInfo[] names =
    [
        .. typeof(QuantityNames).GetFields(BindingFlags.Public | BindingFlags.Static).Where(f => f.IsLiteral),
    ];

    private static readonly HashSet<string> known = [.. names.Select(f => (string)f.GetRawConstantValue()!)];

    [Fact]
    public void ANameIsItsConstant() =>
        Assert.All(names, name => Assert.Equal(name.Name, char.ToUpperInvariant(Value(name)[0]) + Value(name)[1..]));

    /// <summary>Names of two words and more are nothing else in the source; those of one ("gain") are words too.</summary>
    [Fact]
    public void NoNameOfSeveralWordsStandsElsewhere() =>
        Assert.Empty(
            SourceTree
                .SourceFiles()
                .Concat(SourceTree.PageFiles())
                .Select(f => (Path: f, File: SourceTree.Relative(f)))
                .Where(f => f.File != Home && !f.File.StartsWith(Simulation, StringComparison.Ordinal))
                .SelectMany(f => File.ReadLines(f.Path).Where(IsCode).Select(line => (f.File, line)))
                .SelectMany(l => Literal().Matches(l.line).Select(m => (l.File, Word: m.Groups[1].Value)))
                .Where(l => known.Contains(l.Word) || l.Word.StartsWith("hotPixelsAbove", StringComparison.Ordinal))
                .Select(l => $"{l.File}: \"{l.Word}\"; write its name in QuantityNames")
        );

    /// <summary>What answers hold by name is put in and taken out by the constants only.</summary>
    [Fact]
    public void NoAnswerIsAskedForANameInQuotes()
    {
        int seen = 0;
        List<string> quoted = [];
        foreach (CSharpCompilation program in SourceModel.Everything.Compilations)
        foreach (SyntaxTree tree in program.SyntaxTrees)
        {
            SemanticModel model = program.GetSemanticModel(tree);
            foreach (ArgumentSyntax argument in tree.GetRoot().DescendantNodes().OfType<ArgumentSyntax>())
            {
                if (!HoldsMeasurements(argument, model))
                    continue;
                seen++;
                if (argument.Expression.IsKind(SyntaxKind.StringLiteralExpression))
                    quoted.Add($"{tree.FilePath}: {argument}");
            }
        }
        Assert.True(seen > 60, $"only {seen} places seen"); // 105 when this was written
        Assert.Empty(quoted);
    }

    // the first argument of a dictionary of measurements, or of what collects them for an answer
    private static bool HoldsMeasurements(ArgumentSyntax argument, SemanticModel model)
    {
        if (argument.Parent is not BaseArgumentListSyntax { Parent: { } call } list || list.Arguments[0] != argument)
            return false;
        return model.GetSymbolInfo(call).Symbol switch
        {
            IPropertySymbol { IsIndexer: true } indexer => OfMeasurements(indexer.ContainingType.TypeArguments),
            IMethodSymbol { Name: "GetValueOrDefault" } method => OfMeasurements(method.TypeArguments),
            IMethodSymbol { Name: "Add", ContainingType.Name: "AnswerQuantities" } => true,
            _ => false,
        };
    }

    private static bool OfMeasurements(IEnumerable<ITypeSymbol> types) => types.Any(t => t.Name == nameof(Measurement));

    private static string Value(FieldInfo name) => (string)name.GetRawConstantValue()!;

    private static bool IsCode(string line) => !line.TrimStart().StartsWith("//", StringComparison.Ordinal);

    [GeneratedRegex("\"([a-z]+[A-Z0-9][A-Za-z0-9.]*)[\"{]")]
    private static partial Regex Literal();
}
