using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>
/// One verdict for every light set. Quantities: lossWorst (%), the largest
/// loss of a light set with the darks judged best for it.
/// </summary>
public sealed record MatchAnswer : Answer
{
    /// <summary>The verdict on the light set that is served worst.</summary>
    public required MatchVerdict Worst { get; init; }

    /// <summary>One entry per light set, in the order given.</summary>
    public IReadOnlyList<LightMatch> Matches { get; init; } = [];

    /// <summary>
    /// The same lights dithered and with outliers rejected; null where they are stated to be dithered, or without a
    /// profile.
    /// </summary>
    internal MatchAnswer? Dithered { get; init; }

    /// <summary>Every light set against every dark set, grouped by light set.</summary>
    public IReadOnlyList<LightMatch> Pairs { get; init; } = [];
}
