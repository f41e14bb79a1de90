using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.InteropServices;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Jpeg;
using SensorProfile.Raw.Mosaics;

namespace SensorProfile.Raw.Writing;

/// <summary>Writes the samples of a mosaic as strips or tiles and records their positions in its directory.</summary>
internal static class SegmentWriter
{
    /// <summary>Writes the samples.</summary>
    public static void Write(TiffBuilder file, TiffEntries entries, DngFrame frame, DngForm form)
    {
        bool tiled = form.TileSide > 0;
        int width = tiled ? form.TileSide : frame.Width;
        int height =
            tiled ? form.TileSide
            : form.RowsPerStrip > 0 ? Math.Min(form.RowsPerStrip, frame.Height)
            : frame.Height;
        var offsets = new List<long>();
        var lengths = new List<long>();
        for (int top = 0; top < frame.Height; top += height)
        for (int left = 0; left < frame.Width; left += width)
        {
            int rows = tiled ? height : Math.Min(height, frame.Height - top);
            byte[] bytes = Coded(Cut(frame, top, left, rows, width), width, frame.BitsPerSample, form);
            offsets.Add(file.Append(bytes));
            lengths.Add(bytes.Length);
        }
        Describe(entries, frame, form);
        if (tiled)
            entries.Longs(Tag.TileWidth, width);
        entries.Longs(tiled ? Tag.TileLength : Tag.RowsPerStrip, height);
        entries.Longs(tiled ? Tag.TileOffsets : Tag.StripOffsets, offsets);
        entries.Longs(tiled ? Tag.TileByteCounts : Tag.StripByteCounts, lengths);
    }

    private static void Describe(TiffEntries entries, DngFrame frame, DngForm form)
    {
        entries.Longs(Tag.NewSubfileType, 0);
        entries.Longs(Tag.ImageWidth, frame.Width);
        entries.Longs(Tag.ImageLength, frame.Height);
        entries.Shorts(Tag.SamplesPerPixel, 1);
        entries.Shorts(Tag.PlanarConfiguration, 1);
        entries.Shorts(Tag.BitsPerSample, StoredBits(frame.BitsPerSample, form));
        entries.Shorts(
            Tag.Compression,
            form.Compression switch
            {
                RawCompression.LosslessJpeg => 7,
                RawCompression.Deflate => 8,
                _ => 1,
            }
        );
        if (form.Compression == RawCompression.Deflate && form.DifferenceDistance > 0)
            entries.Shorts(
                Tag.Predictor,
                form.DifferenceDistance switch
                {
                    1 => 2,
                    2 => 34892,
                    _ => 34893,
                }
            );
    }

    private static int StoredBits(int bits, DngForm form) =>
        bits == 8 || form.IsPacked || form.Compression == RawCompression.LosslessJpeg ? bits : 16;

    /// <summary>
    /// The samples of a strip or tile; beyond the edges of the mosaic its last column and row are repeated.
    /// </summary>
    private static ushort[] Cut(DngFrame frame, int top, int left, int rows, int width)
    {
        var cut = new ushort[rows * width];
        for (int row = 0; row < rows; row++)
        {
            int from = Math.Min(top + row, frame.Height - 1) * frame.Width;
            ReadOnlySpan<ushort> source = frame.Samples.Span.Slice(from + left, Math.Min(width, frame.Width - left));
            Span<ushort> target = cut.AsSpan(row * width, width);
            source.CopyTo(target);
            target[source.Length..].Fill(source[^1]);
        }
        return cut;
    }

    private static byte[] Coded(ushort[] samples, int width, int bits, DngForm form)
    {
        if (form.Compression == RawCompression.LosslessJpeg)
            return LosslessJpegEncoder.Encode(samples, width * form.JpegRowsPerLine, bits, form);
        int stored = StoredBits(bits, form);
        if (form.Compression == RawCompression.Deflate && form.DifferenceDistance > 0)
            Differences(samples, width, form.DifferenceDistance, (ushort)((1 << stored) - 1));
        byte[] plain = Plain(samples, width, stored, form.IsBigEndian);
        return form.Compression == RawCompression.Deflate ? Deflated(plain) : plain;
    }

    private static void Differences(ushort[] samples, int width, int distance, ushort mask)
    {
        for (int row = 0; row < samples.Length; row += width)
        for (int i = row + width - 1; i >= row + distance; i--)
            samples[i] = (ushort)((samples[i] - samples[i - distance]) & mask);
    }

    private static byte[] Plain(ushort[] samples, int width, int bits, bool bigEndian)
    {
        int rowBytes = ((width * bits) + 7) / 8;
        var bytes = new byte[samples.Length / width * rowBytes];
        if (bits == 16)
        {
            Span<ushort> words = MemoryMarshal.Cast<byte, ushort>(bytes.AsSpan());
            samples.CopyTo(words);
            if (bigEndian == BitConverter.IsLittleEndian)
                BinaryPrimitives.ReverseEndianness(words, words);
            return bytes;
        }
        for (int row = 0; row * width < samples.Length; row++)
            PackedBits.Pack(samples.AsSpan(row * width, width), bytes.AsSpan(row * rowBytes, rowBytes), bits);
        return bytes;
    }

    private static byte[] Deflated(byte[] plain)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            zlib.Write(plain);
        return packed.ToArray();
    }
}
