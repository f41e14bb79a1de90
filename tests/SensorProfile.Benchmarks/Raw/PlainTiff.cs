using System.IO.Compression;
using System.Runtime.InteropServices;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Benchmarks.Raw;

/// <summary>A TIFF mosaic of 16-bit samples in compressed strips, as capture programs write them.</summary>
internal static class PlainTiff
{
    private const int Lzw = 5,
        Deflate = 8;

    public static void Write(string path, ushort[] samples, int width, int rowsPerStrip, bool isLzw)
    {
        using FileStream stream = File.Create(path);
        var file = new TiffBuilder(stream, bigEndian: false);
        TiffEntries entries = file.NewDirectory();
        var offsets = new List<long>();
        var lengths = new List<long>();
        for (int at = 0; at < samples.Length; at += width * rowsPerStrip)
        {
            int count = Math.Min(width * rowsPerStrip, samples.Length - at);
            ReadOnlySpan<byte> plain = MemoryMarshal.AsBytes(samples.AsSpan(at, count));
            byte[] strip = isLzw ? LzwEncoder.Encode(plain) : Deflated(plain);
            offsets.Add(file.Append(strip));
            lengths.Add(strip.Length);
        }
        entries.Longs(Tag.ImageWidth, width);
        entries.Longs(Tag.ImageLength, samples.Length / width);
        entries.Shorts(Tag.BitsPerSample, 16);
        entries.Shorts(Tag.Compression, isLzw ? Lzw : Deflate);
        entries.Shorts(Tag.PhotometricInterpretation, 1);
        entries.Shorts(Tag.SamplesPerPixel, 1);
        entries.Longs(Tag.RowsPerStrip, rowsPerStrip);
        entries.Longs(Tag.StripOffsets, offsets);
        entries.Longs(Tag.StripByteCounts, lengths);
        file.Finish(file.Append(entries));
    }

    private static byte[] Deflated(ReadOnlySpan<byte> plain)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            zlib.Write(plain);
        return packed.ToArray();
    }
}
