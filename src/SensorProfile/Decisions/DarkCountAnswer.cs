namespace SensorProfile.Decisions;

/// <summary>The number of darks. Quantities: darks, lossAt20. Verdict: answered | cannot-tell.</summary>
public sealed record DarkCountAnswer : Answer
{
    /// <summary>Loss against the number of darks.</summary>
    public IReadOnlyList<DarkCountPoint> Curve { get; init; } = [];
}
