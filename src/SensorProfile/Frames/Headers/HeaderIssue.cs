namespace SensorProfile.Frames.Headers;

/// <summary>One thing wrong, or worth knowing, in a frame's header.</summary>
/// <param name="Code">One of the codes of <see cref="FindingCodes"/>.</param>
/// <param name="Detail">What was found, as it appears in the sentence; frames with the same code are reported
/// together.</param>
/// <param name="CuredBy">The column of the capture table that settles the issue when filled in; null when none
/// does.</param>
internal sealed record HeaderIssue(string Code, string Detail = "", string? CuredBy = null)
{
    /// <summary>The format of the header it was found in.</summary>
    public HeaderSource Source { get; init; }
}
