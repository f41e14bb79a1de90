using SensorProfile.Frames;
using SensorProfile.Frames.Capture;

namespace SensorProfile.Cli.Commands.Reading;

/// <summary>Frame sets of one kind from folders that the user named for that kind.</summary>
internal static class SetReading
{
    /// <summary>
    /// Sets of that kind; frames of unknown kind are taken for it, because the user has said what they are, and that they do
    /// not say so themselves needs no finding.
    /// </summary>
    public static IReadOnlyList<FrameSet> Read(
        Session session,
        IReadOnlyList<string> paths,
        FrameKind kind,
        string? table,
        bool namesSay,
        out IReadOnlyList<Finding> findings
    )
    {
        CaptureTable? corrections = table is null ? null : CaptureTable.Read(table);
        Inventory inventory = FrameReading.Read(session, paths, corrections, namesSay);
        findings = [.. inventory.Findings.Where(f => f.Code != FindingCodes.KindMissing)];
        return
        [
            .. inventory
                .Sets.Where(s => s.Kind == kind || s.Kind == FrameKind.Unknown)
                .Select(s => s with { Kind = kind, Frames = [.. s.Frames.Select(f => f with { Kind = kind })] }),
        ];
    }
}
