using Microsoft.CodeAnalysis;

namespace SensorProfile.Tests.HouseRules;

/// <summary>One room using another.</summary>
/// <param name="From">Room that uses, such as <c>DarkCurrent/Laws</c>.</param>
/// <param name="To">Room that is used.</param>
/// <param name="Place">One place where it does.</param>
internal sealed record RoomArrow(string From, string To, string Place);

/// <summary>
/// The rooms of the library and which uses which. A room is a folder with code in it, and its namespace.
/// </summary>
internal static class Rooms
{
    /// <summary>The files that stand in no room: what every room may use.</summary>
    public const string Root = "(root)";

    private const string Library = "SensorProfile";

    private static readonly Lazy<IReadOnlyList<RoomArrow>> _arrows = new(() =>
        Between(References.All.Where(u => u.File.StartsWith($"src/{Library}/", StringComparison.Ordinal)))
    );

    /// <summary>All rooms with code in them.</summary>
    public static IReadOnlyList<string> All() =>
        [
            .. SourceTree
                .SourceFiles()
                .Select(SourceTree.Relative)
                .Select(RoomOfFile)
                .OfType<string>()
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>Every use of one room by another in the library as it is.</summary>
    public static IReadOnlyList<RoomArrow> Arrows => _arrows.Value;

    /// <summary>Every use of another room in some of the library's files.</summary>
    /// <param name="source">The source.</param>
    /// <param name="folder">Only uses in files whose path starts with this.</param>
    public static IReadOnlyList<RoomArrow> ArrowsIn(SourceModel source, string folder) =>
        Between(References.In(source, folder));

    private static RoomArrow[] Between(IEnumerable<SymbolUse> uses) =>
        [
            .. from use in uses
            let fromRoom = RoomOfFile(use.File)
            let toRoom = RoomOfSymbol(use.Target)
            where fromRoom is not null && toRoom is not null && fromRoom != toRoom
            select new RoomArrow(fromRoom, toRoom, $"{use.File}:{use.Line} ({use.Target.ToDisplayString()})"),
        ];

    private static string? RoomOfSymbol(ISymbol symbol) =>
        RoomOfFile(symbol.Locations.First(l => l.IsInSource).SourceTree!.FilePath);

    private static string? RoomOfFile(string file)
    {
        string[] parts = file.Split('/');
        if (parts.Length < 3 || parts[0] != "src" || parts[1] != Library)
            return null;
        string room = string.Join('/', parts[2..^1]);
        return room.Length == 0 ? Root : room;
    }
}
