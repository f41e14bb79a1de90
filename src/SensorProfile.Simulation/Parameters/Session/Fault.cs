namespace SensorProfile.Simulation.Parameters.Session;

/// <summary>Something that goes wrong with chosen frames.</summary>
public sealed record Fault
{
    /// <summary>Shot it hits, counted from 1; null (default) for all.</summary>
    public int? Shot { get; init; }

    /// <summary>Frame within the shot, counted from 1; null (default) for all.</summary>
    public int? Frame { get; init; }

    /// <summary>
    /// Row, counted from 1, from which on the frame carries no exposure; null (default) when it is whole.
    /// </summary>
    public int? TornFromRow { get; init; }

    /// <summary>Bytes that are cut off the end of the file; 0 (default) for none.</summary>
    public int CutBytes { get; init; }

    /// <summary>Keywords that are left out of the header.</summary>
    public IReadOnlyList<string> OmitKeywords { get; init; } = [];

    /// <summary>
    /// Keywords and the text that replaces their values, written as it stands (quotes included), so that wrong values
    /// can be made: "EXPTIME": "300,0".
    /// </summary>
    public IReadOnlyDictionary<string, string> ReplaceKeywords { get; init; } = new Dictionary<string, string>();
}
