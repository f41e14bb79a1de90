using System.Xml.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;

namespace SensorProfile.Tests.HouseRules;

/// <summary>
/// The project's own source as the compiler understands it: programs compiled in memory, each with those it refers to.
/// </summary>
internal sealed class SourceModel
{
    private const string ImplicitUsings = """
        global using System;
        global using System.Collections.Generic;
        global using System.IO;
        global using System.Linq;
        global using System.Net.Http;
        global using System.Threading;
        global using System.Threading.Tasks;
        """;

    private static readonly Lazy<SourceModel> _library = new(LibraryOfEverything);
    private static readonly Lazy<SourceModel> _everything = new(() => new SourceModel("SensorProfile.Cli"));

    private readonly Dictionary<string, CSharpCompilation> _compilations = [];

    private SourceModel(string program, params (string File, string Text)[] additions) => Compile(program, additions);

    private SourceModel(IEnumerable<(string Program, CSharpCompilation Compilation)> compiled) =>
        _compilations = compiled.ToDictionary(c => c.Program, c => c.Compilation);

    /// <summary>The analysis library and what it stands on.</summary>
    public static SourceModel Library => _library.Value;

    /// <summary>All of src.</summary>
    public static SourceModel Everything => _everything.Value;

    /// <summary>The compiled programs, those that others refer to first.</summary>
    public IEnumerable<CSharpCompilation> Compilations => _compilations.Values;

    /// <summary>What the compiler could not make sense of: must be nothing, or the model says too little.</summary>
    public IEnumerable<Diagnostic> Errors =>
        Compilations.SelectMany(c => c.GetDiagnostics()).Where(d => d.Severity == DiagnosticSeverity.Error);

    /// <summary>The library with more files, which stand nowhere but here.</summary>
    public static SourceModel LibraryWith(params (string File, string Text)[] additions) =>
        new("SensorProfile", additions);

    // a part of the whole, so that the library is compiled once for all rules
    private static SourceModel LibraryOfEverything()
    {
        Dictionary<string, CSharpCompilation> all = Everything._compilations;
        HashSet<Compilation> needed = [.. WithReferences(all["SensorProfile"])];
        return new(all.Where(c => needed.Contains(c.Value)).Select(c => (c.Key, c.Value)));
    }

    private static IEnumerable<Compilation> WithReferences(Compilation program) =>
        program
            .References.OfType<CompilationReference>()
            .SelectMany(r => WithReferences(r.Compilation))
            .Append(program);

    private CSharpCompilation Compile(string program, (string File, string Text)[] additions)
    {
        if (_compilations.TryGetValue(program, out CSharpCompilation? known))
            return known;
        var project = XDocument.Load(Path.Combine(SourceTree.Root, "src", program, $"{program}.csproj"));
        MetadataReference[] programs =
        [
            .. Included(project, "ProjectReference")
                .Select(p => Compile(Path.GetFileNameWithoutExtension(p), additions).ToMetadataReference()),
        ];
        string friends = string.Concat(
            Included(project, "InternalsVisibleTo")
                .Select(f => $"[assembly: System.Runtime.CompilerServices.InternalsVisibleTo(\"{f}\")]\n")
        );
        bool runs = Value(project, "OutputType") == "Exe";
        var options = new CSharpCompilationOptions(
            runs ? OutputKind.ConsoleApplication : OutputKind.DynamicallyLinkedLibrary,
            nullableContextOptions: NullableContextOptions.Enable
        );
        string folder = $"src/{program}/";
        var added = additions
            .Where(a => a.File.StartsWith(folder, StringComparison.Ordinal))
            .Select(a => Tree(a.File, a.Text));
        Compilation whole = CSharpCompilation.Create(
            Value(project, "AssemblyName") ?? program,
            [Tree("", $"{ImplicitUsings}\n{friends}"), .. Parsed(folder), .. added],
            [.. programs, .. OtherReferences()],
            options
        );
        GeneratorDriver generators = CSharpGeneratorDriver.Create(
            Generators(),
            parseOptions: new CSharpParseOptions(LanguageVersion.Latest)
        );
        generators.RunGeneratorsAndUpdateCompilation(whole, out whole, out _);
        return _compilations[program] = (CSharpCompilation)whole;
    }

    private static IEnumerable<SyntaxTree> Parsed(string folder) =>
        SourceTree
            .SourceFiles()
            .Where(f => SourceTree.Relative(f).StartsWith(folder, StringComparison.Ordinal))
            .Select(f => Tree(SourceTree.Relative(f), File.ReadAllText(f)));

    private static SyntaxTree Tree(string file, string text) =>
        CSharpSyntaxTree.ParseText(text, new CSharpParseOptions(LanguageVersion.Latest), file);

    private static IEnumerable<string> Included(XDocument project, string item) =>
        project.Descendants(item).Select(i => i.Attribute("Include")!.Value.Replace('\\', '/'));

    private static string? Value(XDocument project, string property) =>
        project.Descendants(property).FirstOrDefault()?.Value;

    // Everything this test runs on, less the project's own assemblies: those are the source.
    private static IEnumerable<MetadataReference> OtherReferences() =>
        ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
            .Split(Path.PathSeparator)
            .Where(f => !Path.GetFileName(f).StartsWith("SensorProfile", StringComparison.OrdinalIgnoreCase))
            .Select(f => MetadataReference.CreateFromFile(f));

    // Those of the SDK that runs this: they write the bodies of regular expressions and the readers of JSON.
    private static IEnumerable<ISourceGenerator> Generators()
    {
        string runtime = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        string packs = Path.Combine(runtime, "..", "..", "..", "packs", "Microsoft.NETCore.App.Ref");
        return
            Directory.EnumerateDirectories(packs, $"{Environment.Version.Major}.*").Max(StringComparer.Ordinal)
                is not { } pack
            ? []
            : Directory
                .EnumerateFiles(Path.Combine(pack, "analyzers", "dotnet", "cs"), "System.*Generat*.dll")
                .Select(f => new AnalyzerFileReference(Path.GetFullPath(f), Loader.Instance))
                .SelectMany(f => f.GetGenerators(LanguageNames.CSharp));
    }

    private sealed class Loader : IAnalyzerAssemblyLoader
    {
        public static readonly Loader Instance = new();

        public void AddDependencyLocation(string fullPath) { }

        public System.Reflection.Assembly LoadFromPath(string fullPath) =>
            System.Reflection.Assembly.LoadFrom(fullPath);
    }
}
