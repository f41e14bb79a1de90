namespace SensorProfile.Tests.HouseRules;

/// <summary>The picture of the rooms in DEVELOPERS.md is that of the code.</summary>
/// <remarks>When a change is meant, put the graph that the failing test prints in its place.</remarks>
public sealed class RoomGraphTests
{
    [Fact]
    public void TheGuideShowsTheRoomsAsTheyAre()
    {
        const string fence = "```mermaid\n";
        string guide = File.ReadAllText(Path.Combine(SourceTree.Root, "DEVELOPERS.md"));
        int start = guide.IndexOf(fence, StringComparison.Ordinal) + fence.Length;
        string shown = guide[start..guide.IndexOf("```", start, StringComparison.Ordinal)];
        string drawn = RoomGraph.Of(Rooms.Arrows);
        Assert.True(shown == drawn, $"DEVELOPERS.md shows other rooms than there are. The graph now:\n{drawn}");
    }
}
