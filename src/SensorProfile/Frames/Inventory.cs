using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames;

/// <summary>What was found under the given paths: frames, the sets they form, files left out, findings.</summary>
public sealed record Inventory
{
    /// <summary>Every readable frame that is in use, in order of time, then of name.</summary>
    public required IReadOnlyList<Frame> Frames { get; init; }

    /// <summary>The frames grouped; the same frames in the same order, each in exactly one set.</summary>
    public required IReadOnlyList<FrameSet> Sets { get; init; }

    /// <summary>Files that were left out, with the reason.</summary>
    public required IReadOnlyList<RejectedFile> Rejected { get; init; }

    /// <summary>
    /// Frames that the capture table leaves out (also in <see cref="Rejected"/>): kept so that a table written from
    /// this inventory leaves them out again.
    /// </summary>
    internal IReadOnlyList<Frame> LeftOut { get; init; } = [];

    /// <summary>
    /// Files in the folders given that can hold no frame, counted by kind, the most frequent first.
    /// </summary>
    public IReadOnlyList<PassedOver> PassedOver { get; init; } = [];

    /// <summary>What the headers and the table show that the user should know.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
