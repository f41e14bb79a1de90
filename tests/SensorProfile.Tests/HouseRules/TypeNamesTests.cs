using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SensorProfile.Tests.HouseRules;

/// <summary>One word, one meaning: a name of the source stands for one type.</summary>
public sealed class TypeNamesTests
{
    // Types inside a type may share a name with others of their kind: "Settings" of every command.
    [Fact]
    public void NoTypeNameStandsTwice()
    {
        var named = SourceTree
            .SourceFiles()
            .SelectMany(Types)
            .GroupBy(t => t.Name, StringComparer.Ordinal)
            .Where(same => same.Any(t => !t.Inside) && same.Select(t => t.Whole).Distinct().Count() > 1)
            .Select(same => $"{same.Key}: {string.Join(", ", same.Select(t => t.File).Distinct())}");
        Assert.Equal("", string.Join('\n', named));
    }

    /// <summary>A file is found by the name of its type.</summary>
    [Fact]
    public void AFileIsNamedForATypeInIt()
    {
        var lost = SourceTree
            .SourceFiles()
            .Where(f => Types(f).ToArray() is { Length: > 0 } types && !types.Any(t => t.Name == NameOf(f)))
            .Select(SourceTree.Relative);
        Assert.Equal("", string.Join('\n', lost));
    }

    private static string NameOf(string file) => Path.GetFileName(file).Split('.', '{')[0];

    // A class and its generic companion (FitsImage, FitsImage<T>) are one name, as in the runtime's own library.
    private static IEnumerable<(string Name, string Whole, bool Inside, string File)> Types(string file) =>
        CSharpSyntaxTree
            .ParseText(File.ReadAllText(file))
            .GetRoot()
            .DescendantNodes()
            .OfType<BaseTypeDeclarationSyntax>()
            .Select(type =>
                (
                    type.Identifier.Text,
                    string.Join('.', type.AncestorsAndSelf().Select(Part).Where(p => p.Length > 0).Reverse()),
                    type.Parent is BaseTypeDeclarationSyntax,
                    SourceTree.Relative(file)
                )
            );

    private static string Part(Microsoft.CodeAnalysis.SyntaxNode node) =>
        node switch
        {
            BaseTypeDeclarationSyntax type => type.Identifier.Text,
            BaseNamespaceDeclarationSyntax room => room.Name.ToString(),
            _ => "",
        };
}
