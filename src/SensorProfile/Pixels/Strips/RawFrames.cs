using SensorProfile.Frames;

namespace SensorProfile.Pixels.Strips;

/// <summary>The raw files among a list of frames, opened; compressed ones are decoded, several at once.</summary>
/// <param name="Frames">The samples of every raw frame, with the reason where it cannot be measured.</param>
/// <param name="Decoded">Holds the decoded samples; null when there are none.</param>
internal sealed record RawFrames(
    IReadOnlyDictionary<Frame, (RawSamples Samples, string? Fault)> Frames,
    DecodedSamples? Decoded
)
{
    /// <summary>Opens the raw files; frames of other formats are skipped.</summary>
    /// <param name="frames">The frames.</param>
    /// <param name="mostOpenFiles">Files kept open.</param>
    /// <param name="threads">Most files decoded at once.</param>
    /// <param name="cancellation">Stops the work between two files.</param>
    public static RawFrames Open(
        IReadOnlyList<Frame> frames,
        int mostOpenFiles,
        int threads,
        CancellationToken cancellation
    )
    {
        Frame[] raw = [.. frames.Where(f => f.Format != FrameFormat.Fits)];
        RawSamples[] samples = [.. raw.Select((f, i) => new RawSamples(f, keepOpen: i < mostOpenFiles))];
        var faults = new string?[raw.Length];
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancellation };
        Parallel.For(0, raw.Length, parallel, i => faults[i] = samples[i].Fault());

        int[] compressed =
        [
            .. Enumerable.Range(0, raw.Length).Where(i => faults[i] is null && samples[i].IsCompressed),
        ];
        var places = new long[compressed.Length + 1];
        for (int i = 0; i < compressed.Length; i++)
            places[i + 1] = places[i] + samples[compressed[i]].StoredSamples;
        DecodedSamples? decoded = compressed.Length > 0 ? DecodedSamples.Make(places[^1]) : null;
        Parallel.For(0, compressed.Length, parallel, i =>
            faults[compressed[i]] = samples[compressed[i]].Decode(decoded, places[i])
        );
        return new RawFrames(
            Enumerable
                .Range(0, raw.Length)
                .ToDictionary(
                    i => raw[i],
                    i => (samples[i], faults[i]),
                    (IEqualityComparer<Frame>)ReferenceEqualityComparer.Instance
                ),
            decoded
        );
    }
}
