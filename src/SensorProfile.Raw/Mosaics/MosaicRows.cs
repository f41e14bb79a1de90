using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Jpeg;

namespace SensorProfile.Raw.Mosaics;

/// <summary>
/// Reads rows of the whole mosaic from its strips or tiles. The decoders of two rows of tiles are kept, a few kilobytes
/// each.
/// </summary>
internal sealed class MosaicRows(TiffDirectory directory, SegmentLayout layout) : IDisposable
{
    private const int MaxBands = 2; // threads sharing the rows of a frame work on both sides of a border

    // for hostile files with thousands of tiles side by side, one row has to do
    private const int MaxTilesOfSeveralBands = 256;

    private readonly Lock gate = new();
    private readonly ushort[] scratch = new ushort[layout.SegmentWidth];
    private readonly List<Band> bands = []; // most recently used last

    /// <summary>Reads part of some rows.</summary>
    /// <param name="firstRow">First row of the mosaic.</param>
    /// <param name="left">First column.</param>
    /// <param name="width">Columns; the span holds a whole number of such rows.</param>
    /// <param name="samples">Receives the samples.</param>
    /// <exception cref="RawFormatException">The samples are damaged.</exception>
    public void Read(int firstRow, int left, int width, Span<ushort> samples)
    {
        lock (gate)
        {
            try
            {
                ReadBands(firstRow, left, width, samples);
            }
            catch
            {
                Leave(); // the decoders are in an undefined state
                throw;
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (gate)
            Leave();
    }

    private void ReadBands(int row, int left, int width, Span<ushort> samples)
    {
        while (!samples.IsEmpty)
        {
            SegmentDecoder[] decoders = DecodersOf(row / layout.SegmentHeight);
            int rowOfBand = row % layout.SegmentHeight;
            int rows = Math.Min(samples.Length / width, layout.SegmentHeight - rowOfBand);
            for (int across = left / layout.SegmentWidth; across * layout.SegmentWidth < left + width; across++)
                ReadPart(decoders[across], across, rowOfBand, left, width, samples[..(rows * width)]);
            samples = samples[(rows * width)..];
            row += rows;
        }
    }

    /// <summary>Releases the byte windows; the decoding positions are kept.</summary>
    public void Park()
    {
        lock (gate)
            foreach (SegmentDecoder decoder in bands.SelectMany(band => band.Decoders))
                decoder.Park();
    }

    private void Leave()
    {
        while (bands.Count > 0)
            Leave(bands[0]);
    }

    private void Leave(Band band)
    {
        bands.Remove(band);
        foreach (SegmentDecoder decoder in band.Decoders)
            decoder.Dispose();
    }

    private SegmentDecoder[] DecodersOf(int index)
    {
        Band? band = bands.Find(known => known.Index == index);
        if (band is not null)
            bands.Remove(band);
        else if (bands.Count == (layout.Across > MaxTilesOfSeveralBands ? 1 : MaxBands))
            Leave(bands[0]);
        band ??= new Band(index, [.. Enumerable.Range(0, layout.Across).Select(across => DecoderOf(across, index))]);
        bands.Add(band);
        return band.Decoders;
    }

    /// <summary>Reads the columns of the rows that lie in one strip or tile.</summary>
    private void ReadPart(SegmentDecoder decoder, int across, int rowOfBand, int left, int width, Span<ushort> samples)
    {
        decoder.MoveTo(rowOfBand, scratch);
        int start = across * layout.SegmentWidth;
        int from = Math.Max(start, left);
        int count = Math.Min(start + layout.SegmentWidth, left + width) - from;
        bool whole = count == layout.SegmentWidth;
        for (int at = from - left; at < samples.Length; at += width)
        {
            decoder.ReadRow(whole ? samples.Slice(at, count) : scratch);
            if (!whole)
                scratch.AsSpan(from - start, count).CopyTo(samples[at..]);
        }
    }

    private SegmentDecoder DecoderOf(int across, int down)
    {
        var bytes = new SegmentBytes(directory, layout.At(across, down));
        return layout.Coding.Compression switch
        {
            RawCompression.None => new PlainDecoder(bytes, layout.Coding),
            RawCompression.LosslessJpeg => new LosslessJpegDecoder(bytes, layout.Coding),
            RawCompression.Deflate => new DeflateDecoder(bytes, layout.Coding),
            _ => new LzwDecoder(bytes, layout.Coding),
        };
    }

    /// <summary>The decoders of the strips or tiles side by side.</summary>
    private sealed record Band(int Index, SegmentDecoder[] Decoders);
}
