using System.Text.RegularExpressions;

namespace SensorProfile.Tests.HouseRules;

/// <summary>
/// The rooms of the library form one direction of flow: a room may use only rooms that stand before it.
/// </summary>
public sealed partial class RoomArrowsTests
{
    // Rooms on one line do not know each other.
    private static readonly string[][] Order =
    [
        ["Fitting", "Profiles"],
        ["Frames"],
        ["Pixels"],
        ["PhotonTransfer", "DarkCurrent", "FixedPattern"],
        ["Prediction"],
        ["Characterisation"],
        ["Decisions"],
        ["Drift"],
    ];

    [Fact]
    public void EveryRoomIsInTheOrder()
    {
        string library = Path.Combine(SourceTree.Root, "src", "SensorProfile");
        string[] rooms =
        [
            .. Directory
                .EnumerateDirectories(library)
                .Select(d => Path.GetFileName(d))
                .Where(r => r is not ("bin" or "obj"))
                .Order(StringComparer.Ordinal),
        ];
        Assert.Subset(Order.SelectMany(r => r).ToHashSet(), rooms.ToHashSet());
    }

    [Fact]
    public void NoArrowPointsBack()
    {
        var wrong = new List<string>();
        foreach (string file in SourceTree.SourceFiles())
        {
            string[] parts = SourceTree.Relative(file).Split('/');
            if (parts.Length < 4 || parts[1] != "SensorProfile")
                continue;
            int rank = RankOf(parts[2]);
            foreach (Match use in RoomName().Matches(File.ReadAllText(file)))
            {
                string room = use.Groups[1].Value;
                if (room != parts[2] && RankOf(room) >= rank)
                    wrong.Add($"{SourceTree.Relative(file)} uses {room}");
            }
        }
        Assert.Empty(wrong);
    }

    [Fact]
    public void NamespaceIsTheFolder()
    {
        var wrong = SourceTree
            .SourceFiles()
            .Where(f =>
                !File.ReadAllText(f).Contains($"\nnamespace {ExpectedNamespace(f)};", StringComparison.Ordinal)
                && !File.ReadAllText(f).StartsWith($"namespace {ExpectedNamespace(f)};", StringComparison.Ordinal)
            )
            .Select(SourceTree.Relative)
            .Where(f =>
                !f.EndsWith("/Program.cs", StringComparison.Ordinal)
                && !f.EndsWith("/AssemblyInfo.cs", StringComparison.Ordinal)
            );
        Assert.Empty(wrong);
    }

    private static string ExpectedNamespace(string file) =>
        string.Join('.', SourceTree.Relative(file).Split('/')[1..^1]);

    private static int RankOf(string room) => Array.FindIndex(Order, line => line.Contains(room));

    [GeneratedRegex(
        @"\bSensorProfile\.(Fitting|Profiles|Frames|Pixels|PhotonTransfer|DarkCurrent|FixedPattern|Prediction|Characterisation|Decisions|Drift)\b"
    )]
    private static partial Regex RoomName();
}
