using SensorProfile.Frames;

namespace SensorProfile.Pixels.Strips;

/// <summary>The frames of a set, ready to read, and those that had to be refused.</summary>
internal sealed class FrameStack : IDisposable
{
    /// <summary>
    /// Files kept open at once; any others are opened for each read, to stay within the limits of the system.
    /// </summary>
    public const int MaxOpenFiles = 400;

    private readonly DecodedSamples? _decoded;

    private FrameStack(
        IReadOnlyList<IFrameSamples> frames,
        IReadOnlyList<RefusedFrame> refused,
        DecodedSamples? decoded = null
    ) => (Samples, Refused, _decoded) = (frames, refused, decoded);

    /// <summary>The good frames, in the order given.</summary>
    public IReadOnlyList<IFrameSamples> Samples { get; }

    /// <summary>The refused frames, with the reason.</summary>
    public IReadOnlyList<RefusedFrame> Refused { get; }

    /// <summary>
    /// Opens the frames that can be read and reports those that cannot; one bad file never stops the rest.
    /// </summary>
    /// <param name="frames">The frames.</param>
    /// <param name="mostOpenFiles">Files kept open; by default as many as the system allows.</param>
    /// <param name="threads">Most files decoded at once; by default the processor count.</param>
    /// <param name="cancellation">Stops the work between two files.</param>
    public static FrameStack Open(
        IReadOnlyList<Frame> frames,
        int? mostOpenFiles = null,
        int? threads = null,
        CancellationToken cancellation = default
    )
    {
        int open = mostOpenFiles ?? OpenFileLimit.Frames;
        RawFrames raw = RawFrames.Open(frames, open, threads ?? Environment.ProcessorCount, cancellation);
        var good = new List<IFrameSamples>();
        var refused = new List<RefusedFrame>();
        foreach (var frame in frames)
        {
            cancellation.ThrowIfCancellationRequested();
            if (raw.Frames.TryGetValue(frame, out var opened))
            {
                if (opened.Fault is { } problem)
                    refused.Add(new RefusedFrame(frame, problem));
                else
                    good.Add(opened.Samples);
                continue;
            }
            var samples = new FitsSamples(frame, keepOpen: good.Count < open);
            if (samples.Fault() is { } fault)
                refused.Add(new RefusedFrame(frame, fault));
            else
                good.Add(samples);
        }
        ShareMissing(good);
        return new FrameStack(good, refused, raw.Decoded);
    }

    // A pixel that one frame lacks is left out of all: its substitute must be the same pixel everywhere, or the fixed
    // pattern would pass for noise. If that would leave too few, each frame keeps its own gaps.
    private static void ShareMissing(IReadOnlyList<IFrameSamples> frames)
    {
        foreach (var size in frames.OfType<FitsSamples>().GroupBy(f => (f.Width, f.Height)))
        {
            if (!size.Any(f => f.Missing is not null))
                continue;
            var all = new MissingPixels(size.Key.Width, size.Key.Height);
            foreach (FitsSamples frame in size)
                if (frame.Missing is { } own)
                    all.Add(own);
            if (all.Count <= FitsSamples.MaxBlank * size.Key.Width * size.Key.Height)
                foreach (FitsSamples frame in size)
                    frame.Share(all);
        }
    }

    /// <summary>Names of frames with pixels that have no value, and how many each has.</summary>
    public IReadOnlyList<(string Name, long Pixels)> Blanks =>
        [.. Samples.OfType<FitsSamples>().Where(s => s.Blank > 0).Select(s => (s.Name, s.Blank))];

    /// <summary>Frames whose samples are in memory; none of them can be refused.</summary>
    public static FrameStack InMemory(IReadOnlyList<IFrameSamples> frames) => new(frames, []);

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var frame in Samples)
            (frame as IDisposable)?.Dispose();
        _decoded?.Dispose();
    }
}
