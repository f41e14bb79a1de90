using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Jpeg;

namespace SensorProfile.Raw.Mosaics;

/// <summary>
/// Rows of the whole mosaic from its strips or tiles. Only the decoders of one row of tiles are kept, a few kilobytes
/// each.
/// </summary>
internal sealed class MosaicRows(TiffDirectory directory, SegmentLayout layout) : IDisposable
{
    private readonly Lock gate = new();
    private readonly ushort[] scratch = new ushort[layout.SegmentWidth];
    private SegmentDecoder[] decoders = [];
    private int band = -1;

    /// <summary>Reads a part of some rows.</summary>
    /// <param name="firstRow">First row of the mosaic.</param>
    /// <param name="left">First column.</param>
    /// <param name="width">Columns; the span holds a whole number of such rows.</param>
    /// <param name="samples">Where they go.</param>
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
                Leave(); // the decoders stand in the middle of something
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
            Enter(row / layout.SegmentHeight);
            int rowOfBand = row % layout.SegmentHeight;
            int rows = Math.Min(samples.Length / width, layout.SegmentHeight - rowOfBand);
            for (int across = left / layout.SegmentWidth; across * layout.SegmentWidth < left + width; across++)
                ReadPart(across, rowOfBand, left, width, samples[..(rows * width)]);
            samples = samples[(rows * width)..];
            row += rows;
        }
    }

    /// <summary>Gives back windows of bytes; where decoding stands is kept.</summary>
    public void Park()
    {
        lock (gate)
            foreach (SegmentDecoder decoder in decoders)
                decoder.Park();
    }

    private void Leave()
    {
        foreach (SegmentDecoder decoder in decoders)
            decoder.Dispose();
        (decoders, band) = ([], -1);
    }

    private void Enter(int wanted)
    {
        if (band == wanted)
            return;
        Leave();
        var entered = new SegmentDecoder[layout.Across];
        for (int across = 0; across < entered.Length; across++)
            entered[across] = DecoderOf(new SegmentBytes(directory, layout.At(across, wanted)));
        (decoders, band) = (entered, wanted);
    }

    /// <summary>The columns that one strip or tile has of the rows.</summary>
    private void ReadPart(int across, int rowOfBand, int left, int width, Span<ushort> samples)
    {
        SegmentDecoder decoder = decoders[across];
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

    private SegmentDecoder DecoderOf(SegmentBytes bytes) =>
        layout.Coding.Compression switch
        {
            RawCompression.None => new PlainDecoder(bytes, layout.Coding),
            RawCompression.LosslessJpeg => new LosslessJpegDecoder(bytes, layout.Coding),
            RawCompression.Deflate => new DeflateDecoder(bytes, layout.Coding),
            _ => new LzwDecoder(bytes, layout.Coding),
        };
}
