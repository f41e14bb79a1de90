namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>A fault of chosen frames.</summary>
public sealed record Fault
{
    /// <summary>Shot concerned, counted from 1; null (default) for all.</summary>
    public int? Shot { get; init; }

    /// <summary>Frame within the shot, counted from 1; null (default) for all.</summary>
    public int? Frame { get; init; }

    /// <summary>
    /// Row, counted from 1, from which on the frame has no exposure; null (default) for a whole frame.
    /// </summary>
    public int? TornFromRow { get; init; }

    /// <summary>Bytes cut off the end of the file; 0 (default) for none.</summary>
    public int CutBytes { get; init; }

    /// <summary>Keywords omitted from the header.</summary>
    public IReadOnlyList<string> OmitKeywords { get; init; } = [];

    /// <summary>
    /// Keywords and the literal text (quotes included) that replaces their values, so that wrong values are possible:
    /// "EXPTIME": "300,0".
    /// </summary>
    public IReadOnlyDictionary<string, string> ReplaceKeywords { get; init; } = new Dictionary<string, string>();
}
