using System.Text.RegularExpressions;

namespace SensorProfile.Tests.HouseRules;

/// <summary>
/// Tests mirror the code: what fails names the room. Every file of more than 70 lines of code has a test named for it,
/// or is reached from the tests of its own room.
/// </summary>
/// <remarks>
/// The tests of a room stand in the folder of its name (<c>src/SensorProfile/FixedPattern/Glow</c>:
/// <c>tests/SensorProfile.Tests/FixedPattern/Glow</c>). They reach what they name, what the simulated nights and folders
/// that they share name for them, and what all that names in turn within its program.
/// </remarks>
public sealed partial class MirroredTests
{
    private const int Small = 70;

    /// <summary>Files and rooms without a test of their own room, and what holds them.</summary>
    private static readonly Dictionary<string, string> exceptions = new()
    {
        ["src/SensorProfile.Cli/Commands/"] =
            "CommandMatrixTests, and the tests named for each command, ask it in its own words",
        ["src/SensorProfile.Reporting/Handbook/"] = "HandbookTests and HelpCommandTests read its pages by the command",
        ["src/SensorProfile.Reporting/Notebooks/"] =
            ".ci/run makes every notebook's page and compares it with the committed one",
        ["src/SensorProfile/Characterisation/Maps/MapFiles.cs"] =
            "CharacteriseTests read every map that the command writes",
    };

    private sealed record Source(string File, IReadOnlySet<string> Types, IReadOnlySet<string> Names, int Lines)
    {
        public string Program { get; } = File.Split('/')[1];
        public string Room { get; } = string.Join('/', File.Split('/')[2..^1]);
        public string Name { get; } = Path.GetFileName(File).Split('.', '{')[0];
    }

    [Fact]
    public void EveryLargeFileIsReachedFromTheTestsOfItsRoom()
    {
        Source[] sources = [.. SourceTree.SourceFiles().Select(Read)],
            tests = [.. SourceTree.TestFiles().Select(Read)];
        Source[] without =
        [
            .. sources
                .GroupBy(s => (s.Program, s.Room))
                .SelectMany(room => Unreached(room.Key.Program, room.Key.Room, sources, tests)),
        ];
        Assert.Equal(
            "",
            string.Join('\n', without.Select(s => s.File).Where(f => !exceptions.Keys.Any(known => IsIn(f, known))))
        );
        Assert.All(exceptions.Keys, known => Assert.Contains(without, s => IsIn(s.File, known)));
    }

    private static bool IsIn(string file, string place) => file.StartsWith(place, StringComparison.Ordinal);

    private static IEnumerable<Source> Unreached(string program, string room, Source[] sources, Source[] tests)
    {
        Source[] own = [.. tests.Where(t => IsOfRoom(t, program, room))],
            all = [.. sources.Where(s => s.Program == program)];
        HashSet<string> named = [.. tests.Select(t => t.Name)];
        Source[] withHelpers = [.. Closure(own, [.. tests.Where(t => !IsTest(t))])];
        HashSet<Source> reached = Closure(withHelpers, all);
        return all.Where(s =>
            s.Room == room && s.Lines > Small && !reached.Contains(s) && !named.Contains(s.Name + "Tests")
        );
    }

    private static HashSet<Source> Closure(Source[] own, Source[] among)
    {
        HashSet<Source> reached = [.. own];
        var open = new Queue<Source>(own);
        while (open.TryDequeue(out Source? next))
            foreach (Source further in among.Where(s => s.Types.Overlaps(next.Names)))
                if (reached.Add(further))
                    open.Enqueue(further);
        return reached;
    }

    private static bool IsTest(Source test) => test.Name.EndsWith("Tests", StringComparison.Ordinal);

    // the folder of the room's name in the tests of its program, or of the command that runs it
    private static bool IsOfRoom(Source test, string program, string room) =>
        room.Length == 0
            ? test.Program == program + ".Tests" && test.Room.Length == 0
            : (test.Room + "/").StartsWith(room + "/", StringComparison.Ordinal)
                && (test.Program == program + ".Tests" || test.Program == "SensorProfile.Cli.Tests");

    private static Source Read(string path)
    {
        string[] code = [.. File.ReadLines(path).Where(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal))];
        string text = string.Join('\n', code);
        return new Source(
            SourceTree.Relative(path),
            new HashSet<string>(TypeName().Matches(text).Select(m => m.Groups[1].Value)),
            new HashSet<string>(Identifier().Matches(text).Select(m => m.Value)),
            code.Count(l => l.Any(char.IsLetterOrDigit) && !l.StartsWith("using ", StringComparison.Ordinal))
        );
    }

    [GeneratedRegex(@"\b(?:class|record struct|record|struct|enum|interface)\s+([A-Z]\w+)")]
    private static partial Regex TypeName();

    [GeneratedRegex(@"\b[A-Z]\w+\b")]
    private static partial Regex Identifier();
}
