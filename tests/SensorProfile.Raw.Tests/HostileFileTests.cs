using System.IO.Compression;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Jpeg;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests;

/// <summary>Small files that ask for much: each takes less than 400 MB to its last row.</summary>
/// <remarks>
/// Each took at most 3 s on two cores of 2.45 GHz; times are not held here, since machines are shared.
/// </remarks>
public sealed class HostileFileTests
{
    private const long MostBytes = 400L << 20;

    [Fact]
    public void ARowOfManyTilesWithFourHuffmanTablesEach()
    {
        // 4095 tiles of 16 × 16 side by side: all their decoders are held at once.
        const int across = 4095;
        byte[] tile = FourTables(
            LosslessJpegEncoder.Encode(new ushort[256], 16, 12, new DngForm { JpegComponents = 4 })
        );
        byte[] bytes = File(across * 16, 16, 7, tile, tags =>
        {
            tags.Shorts(Tag.BitsPerSample, 12);
            tags.Longs(Tag.TileWidth, 16);
            tags.Longs(Tag.TileLength, 16);
            tags.Longs(Tag.TileOffsets, [.. Enumerable.Repeat(8L, across)]);
            tags.Longs(Tag.TileByteCounts, [.. Enumerable.Repeat((long)tile.Length, across)]);
        });
        ReadAll(bytes);
    }

    [Fact]
    public void ADeflateBombOfManySamples()
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            for (int row = 0; row < 10_000; row++)
                zlib.Write(new byte[40_000]);
        ReadAll(File(20_000, 10_000, 8, packed.ToArray(), _ => { }));
    }

    [Fact]
    public void OneStripForEveryRowThatAllStandAtOnePlace()
    {
        byte[] strip = LosslessJpegEncoder.Encode(new ushort[6_000], 6_000, 12, new DngForm());
        byte[] bytes = File(6_000, 20_000, 7, strip, tags =>
        {
            tags.Shorts(Tag.BitsPerSample, 12);
            tags.Longs(Tag.RowsPerStrip, 1);
            tags.Longs(Tag.StripOffsets, [.. Enumerable.Repeat(8L, 20_000)]);
            tags.Longs(Tag.StripByteCounts, [.. Enumerable.Repeat((long)strip.Length, 20_000)]);
        });
        ReadAll(bytes);
    }

    [Fact]
    public void ManyDirectoriesWithManyEntries()
    {
        byte[] good = TestFrames.Bytes(EditedFile.Frame, new DngForm());
        const int entries = 4096;
        const int number = 63;
        byte[] bytes = [.. good, .. new byte[number * (2 + (entries * 12) + 4)]];
        int first = BitConverter.ToInt32(good, 4);
        int link = first + 2 + (12 * BitConverter.ToInt16(good, first));
        for (int i = 0; i < number; i++)
        {
            int at = good.Length + (i * (2 + (entries * 12) + 4));
            BitConverter.TryWriteBytes(bytes.AsSpan(link), at);
            BitConverter.TryWriteBytes(bytes.AsSpan(at), (ushort)entries);
            for (int e = 0; e < entries; e++)
                BitConverter.TryWriteBytes(bytes.AsSpan(at + 2 + (e * 12)), (ushort)(e + 1000));
            link = at + 2 + (entries * 12);
        }
        ReadAll(bytes);
    }

    /// <summary>The same image with a table for every component, instead of one for all.</summary>
    private static byte[] FourTables(byte[] jpeg)
    {
        int table = jpeg.AsSpan().IndexOf(new byte[] { 0xFF, 0xC4 });
        int scan = jpeg.AsSpan().IndexOf(new byte[] { 0xFF, 0xDA });
        byte[] four =
        [
            .. Enumerable
                .Range(0, 4)
                .SelectMany(place =>
                {
                    byte[] copy = jpeg[table..scan];
                    copy[4] = (byte)place;
                    return copy;
                }),
        ];
        byte[] header = jpeg[scan..];
        for (int c = 0; c < 4; c++)
            header[6 + (2 * c)] = (byte)(c << 4);
        return [.. jpeg[..table], .. four, .. header];
    }

    private static byte[] File(int width, int height, int compression, byte[] segment, Action<TiffEntries> edit)
    {
        using var stream = new MemoryStream();
        var file = new TiffBuilder(stream, bigEndian: false);
        long offset = file.Append(segment);
        TiffEntries tags = file.NewDirectory();
        DngTags.AddMosaic(tags, EditedFile.Frame);
        DngTags.AddCamera(tags, EditedFile.Frame);
        tags.Longs(Tag.ImageWidth, width);
        tags.Longs(Tag.ImageLength, height);
        tags.Shorts(Tag.BitsPerSample, 16);
        tags.Shorts(Tag.Compression, compression);
        tags.Longs(Tag.StripOffsets, offset);
        tags.Longs(Tag.StripByteCounts, segment.Length);
        edit(tags);
        file.Finish(file.Append(tags));
        return stream.ToArray();
    }

    private static void ReadAll(byte[] bytes)
    {
        long before = GC.GetTotalMemory(forceFullCollection: true);
        long most = 0;
        using (RawFile file = RawFile.Open(new MemoryBytes(bytes)))
        {
            (int width, int height) = (file.Mosaic.SensorWidth, file.Mosaic.SensorHeight);
            var rows = new ushort[16 * width];
            for (int row = 0; row < height; row += 16)
            {
                int count = Math.Min(16, height - row);
                file.ReadSensorRows(row, rows.AsSpan(0, count * width));
                most = Math.Max(most, GC.GetTotalMemory(forceFullCollection: false) - before);
            }
        }
        Assert.InRange(most, 0, MostBytes);
    }
}
