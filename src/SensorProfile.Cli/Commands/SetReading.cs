using SensorProfile.Frames;

namespace SensorProfile.Cli.Commands;

/// <summary>Frame sets of one kind from folders that the user named for that kind.</summary>
internal static class SetReading
{
    /// <summary>Sets of that kind; frames whose kind is not said count as it too, for the user said what they are.</summary>
    public static IReadOnlyList<FrameSet> Read(Session session, StackSettings settings, IReadOnlyList<string> paths, FrameKind kind, out IReadOnlyList<Finding> findings)
    {
        CaptureTable? table = settings.Table is { } file ? CaptureTable.Read(file) : null;
        Inventory inventory = FrameReading.Read(session, paths, table, settings.NamesSay);
        findings = inventory.Findings;
        return [.. inventory.Sets.Where(s => s.Kind == kind || s.Kind == FrameKind.Unknown)];
    }
}
