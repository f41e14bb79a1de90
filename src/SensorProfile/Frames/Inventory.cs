using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames;

/// <summary>The inventory of the given paths: frames, the sets they form, files left out, findings.</summary>
public sealed record Inventory
{
    /// <summary>Every usable frame, ordered by time, then by name.</summary>
    public required IReadOnlyList<Frame> Frames { get; init; }

    /// <summary>The sets: the same frames in the same order, each in exactly one set.</summary>
    public required IReadOnlyList<FrameSet> Sets { get; init; }

    /// <summary>Files that were left out, with the reason.</summary>
    public required IReadOnlyList<RejectedFile> Rejected { get; init; }

    /// <summary>
    /// Frames that the capture table leaves out (also in <see cref="Rejected"/>): kept so that a table written from
    /// this inventory leaves them out again.
    /// </summary>
    internal IReadOnlyList<Frame> LeftOut { get; init; } = [];

    /// <summary>
    /// Files in the given folders that cannot hold a frame, counted by kind, most frequent first.
    /// </summary>
    internal IReadOnlyList<PassedOver> PassedOver { get; init; } = [];

    /// <summary>What the user should know from the headers and the table.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
