namespace SensorProfile.Decisions;

/// <summary>One verdict for every light set; the answer's verdict is the worst of them.</summary>
public sealed record MatchAnswer : Answer
{
    /// <summary>One entry per light set, in the order given.</summary>
    public IReadOnlyList<LightMatch> Matches { get; init; } = [];
}
