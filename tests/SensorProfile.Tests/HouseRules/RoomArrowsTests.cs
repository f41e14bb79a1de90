namespace SensorProfile.Tests.HouseRules;

/// <summary>The rooms of the library form one direction of flow, as the compiler sees it.</summary>
public sealed class RoomArrowsTests
{
    [Fact]
    public void TheCompilerUnderstandsTheSource() => Assert.Empty(SourceModel.Library.Errors.Take(20));

    [Fact]
    public void EveryRoomHasItsPlaceInTheOrder() =>
        Assert.Equal(Rooms.All(), RoomOrder.Rooms.Order(StringComparer.Ordinal));

    [Fact]
    public void NoArrowPointsBack()
    {
        IReadOnlyList<RoomArrow> arrows = Rooms.Arrows;
        Assert.True(arrows.Count > 10_000, $"only {arrows.Count} uses seen"); // 26 300 when this was written
        Assert.Empty(arrows.Where(PointsBack).Select(Words));
    }

    // One use each that points back from the innermost room.
    private static readonly Dictionary<string, string> _wrongUses = new()
    {
        ["FullyQualified"] = "public static double Use() => SensorProfile.Frames.Sets.ProbeSteps.Widen(1, 2);",
        ["Constant"] = "public const string Use = SensorProfile.Drift.Archive.ProfileArchive.ProfileName;",
        ["NameOf"] = "public const string Use = nameof(global::SensorProfile.Prediction.DarkForecast);",
        ["TypeOf"] = "public static readonly Type Use = typeof(SensorProfile.Decisions.DarkPlan.DarksPlan);",
    };

    private static readonly Lazy<SourceModel> _withWrongUses = new(() =>
        SourceModel.LibraryWith([.. _wrongUses.Select(w => (WrongFile(w.Key), WrongText(w.Key, w.Value)))])
    );

    [Theory]
    [InlineData("FullyQualified", "Frames/Sets")]
    [InlineData("Constant", "Drift/Archive")]
    [InlineData("NameOf", "Prediction")]
    [InlineData("TypeOf", "Decisions/DarkPlan")]
    public void AnArrowThatPointsBackIsFoundHoweverItIsWritten(string use, string room) =>
        Assert.Contains(Rooms.ArrowsIn(_withWrongUses.Value, WrongFile(use)).Where(PointsBack), a => a.To == room);

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

    private static bool PointsBack(RoomArrow arrow) => RankOf(arrow.To) >= RankOf(arrow.From);

    private static string Words(RoomArrow arrow) => $"{arrow.From} uses {arrow.To}: {arrow.Place}";

    private static int RankOf(string room) => RoomOrder.Rooms.ToList().IndexOf(room);

    private static string WrongFile(string name) => $"src/SensorProfile/Fitting/Statistics/Wrong{name}.cs";

    private static string WrongText(string name, string use) =>
        $"namespace SensorProfile.Fitting.Statistics; internal static class Wrong{name} {{ {use} }}";

    private static string ExpectedNamespace(string file) =>
        string.Join('.', SourceTree.Relative(file).Split('/')[1..^1]);
}
