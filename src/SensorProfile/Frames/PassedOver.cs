namespace SensorProfile.Frames;

/// <summary>Files of one kind in the given folders that cannot hold a frame and were skipped.</summary>
/// <param name="Kind">The kind in words, for one file: "JPEG picture".</param>
/// <param name="Files">Number of such files.</param>
internal sealed record PassedOver(string Kind, int Files)
{
    /// <summary>"12 JPEG pictures and 1 text file"; empty when none was skipped.</summary>
    public static string Describe(IReadOnlyList<PassedOver> kinds) =>
        Counted.List([.. kinds.Select(kind => Counted.Nouns(kind.Files, kind.Kind))]);
}
