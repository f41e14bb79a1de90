namespace SensorProfile.Frames;

/// <summary>Files of one kind in the given folders that can hold no frame and were passed over.</summary>
/// <param name="Kind">The kind in words, for one file: "JPEG picture".</param>
/// <param name="Files">How many there are.</param>
public sealed record PassedOver(string Kind, int Files)
{
    /// <summary>"12 JPEG pictures and 1 text file"; empty when none was passed over.</summary>
    public static string Describe(IReadOnlyList<PassedOver> kinds) =>
        Counted.List([.. kinds.Select(kind => Counted.Nouns(kind.Files, kind.Kind))]);
}
