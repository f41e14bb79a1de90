using SensorProfile.Frames;
using SensorProfile.Raw;
using SensorProfile.Raw.LibRaw;

namespace SensorProfile.Pixels.Strips;

/// <summary>The samples in the active area of a raw file, linearised where the codes follow a curve.</summary>
/// <remarks>
/// Uncompressed samples are read in place. Compressed ones are decoded once, into <see cref="DecodedSamples"/>; if
/// there is no room, they are decoded for each read, which is slow but gives the same samples.
/// </remarks>
internal sealed class RawSamples(Frame frame, bool keepOpen) : IFrameSamples, IDisposable
{
    private readonly Lock _gate = new();
    private RawFile? _file;
    private DecodedSamples? _decoded;
    private long _place;

    /// <inheritdoc/>
    public string Name => frame.Name;

    /// <inheritdoc/>
    public int Width => frame.Width;

    /// <inheritdoc/>
    public int Height => frame.Height;

    /// <summary>Whether the samples have to be decoded in order; set by <see cref="Fault"/>.</summary>
    public bool IsCompressed { get; private set; }

    /// <inheritdoc/>
    public MaskedArea? Masked { get; private set; }

    /// <summary>Number of samples that <see cref="Decode"/> stores.</summary>
    public long StoredSamples => ((long)Width * Height) + (Masked?.Samples ?? 0);

    /// <inheritdoc/>
    public void ReadMasked(Span<ushort> samples)
    {
        if (Masked is not { } area)
            throw new NotSupportedException($"{Name} has no masked pixels.");
        if (_decoded is { } decoded)
        {
            decoded.Read(_place + ((long)Width * Height), samples);
            return;
        }
        using RawFile file = RawFile.Open(frame.Path);
        var rows = new SensorRows(file, area);
        while (rows.Next()) { }
        rows.Masked.CopyTo(samples);
    }

    /// <inheritdoc/>
    public void ReadRows(int firstRow, Span<ushort> samples)
    {
        if (_decoded is { } decoded)
        {
            decoded.Read(_place + ((long)firstRow * Width), samples);
            return;
        }
        if (keepOpen)
        {
            Read(KeptFile(), firstRow, samples);
            return;
        }
        using RawFile file = RawFile.Open(frame.Path);
        Read(file, firstRow, samples);
    }

    /// <summary>
    /// Says why the frame cannot be measured, or null when it can. If uncompressed, the last row is read to check that
    /// it is there.
    /// </summary>
    public string? Fault() =>
        Trying(() =>
        {
            if (IsOther)
            {
                IsCompressed = true;
                Masked = frame.Sensor is { } sensor ? MaskedArea.Find(sensor) : null;
                return null;
            }
            using RawFile file = RawFile.Open(frame.Path);
            if (file.Mosaic.Width != Width || file.Mosaic.Height != Height)
                return $"{Name} is {file.Mosaic.Width} × {file.Mosaic.Height} px, but was {Width} × {Height} px when "
                    + "it was listed; list the frames again.";
            IsCompressed = file.Storage.Compression != RawCompression.None;
            Masked = MaskedArea.Find(SensorArea.Of(file.Mosaic));
            if (!IsCompressed)
                file.ReadRows(Height - 1, new ushort[Width]);
            return null;
        });

    /// <summary>Decodes all rows, and stores them if a store is given; says why it cannot be done, or null.</summary>
    /// <param name="decoded">Receives the samples; null only checks that they can be decoded.</param>
    /// <param name="place">Index of the first sample in the store.</param>
    public string? Decode(DecodedSamples? decoded, long place) =>
        Trying(() =>
        {
            if (IsOther)
                return DecodeOther(decoded, place);
            using RawFile file = RawFile.Open(frame.Path);
            var rows = new SensorRows(file, Masked);
            while (rows.Next())
                decoded?.Write(place + ((long)rows.FirstRow * Width), rows.Active);
            decoded?.Write(place + ((long)Width * Height), rows.Masked);
            (_decoded, _place) = (decoded, place);
            return null;
        });

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_gate)
        {
            _file?.Dispose();
            _file = null;
        }
    }

    private bool IsOther => frame.Format == FrameFormat.OtherRaw;

    private string? DecodeOther(DecodedSamples? decoded, long place)
    {
        if (decoded is null)
            return "The folder for temporary files has no room for its decoded samples: free some space, or set "
                + "TMPDIR to another folder.";
        SensorSplit? split = null;
        RawMosaic mosaic = LibRawDecoder
            .Decode(frame.Path, (raw, row, samples) =>
            {
                if (raw.Mosaic.Width != Width || raw.Mosaic.Height != Height)
                    return;
                // the announced border may turn out not to be available
                if (Masked is not null && MaskedArea.Find(SensorArea.Of(raw.Mosaic)) != Masked)
                    Masked = null;
                split ??= new SensorSplit(
                    raw.Mosaic.SensorWidth,
                    raw.Mosaic.ActiveArea,
                    Masked,
                    samples.Length / raw.Mosaic.SensorWidth
                );
                split.Take(row, samples.Span);
                decoded.Write(place + ((long)split.FirstRow * Width), split.Active);
            })
            .Mosaic;
        if (split is not null)
            decoded.Write(place + ((long)Width * Height), split.Masked);
        (_decoded, _place) = (decoded, place);
        return mosaic.Width == Width && mosaic.Height == Height
            ? null
            : $"{Name} is no longer the size it was when listed; list the frames again.";
    }

    private static void Read(RawFile file, int firstRow, Span<ushort> samples)
    {
        file.ReadRows(firstRow, samples);
        file.Mosaic.Linearisation?.Apply(samples);
    }

    private static string? Trying(Func<string?> look)
    {
        try
        {
            return look();
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            return unreadable is RawFormatException format ? format.Statement : unreadable.Message;
        }
    }

    private RawFile KeptFile()
    {
        lock (_gate)
            return _file ??= RawFile.Open(frame.Path);
    }
}
