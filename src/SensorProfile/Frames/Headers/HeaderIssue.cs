namespace SensorProfile.Frames.Headers;

/// <summary>One thing that is wrong or worth knowing about one frame's header.</summary>
/// <param name="Code">One of the codes of <see cref="FindingCodes"/>.</param>
/// <param name="Detail">What was found, as it goes into the sentence; frames with the same code are told
/// together.</param>
/// <param name="CuredBy">The column of the capture table that makes it void when filled in; null when none
/// does.</param>
internal sealed record HeaderIssue(string Code, string Detail = "", string? CuredBy = null)
{
    /// <summary>Where it was found.</summary>
    public HeaderSource Source { get; init; }
}
