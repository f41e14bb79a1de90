using System.Runtime.InteropServices;
using BitMiracle.LibTiff.Classic;
using SensorProfile.Raw.Mosaics;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Outside;

/// <summary>
/// LibTiff.NET reads the strips and tiles that we write, and we read the plain TIFF files that it writes.
/// </summary>
public sealed class LibTiffTests
{
    [
        Theory,
        InlineData("words"),
        InlineData("packed, big-endian, strips"),
        InlineData("tiles"),
        InlineData("packed tiles"),
        InlineData("Deflate"),
        InlineData("Deflate, differences, tiles"),
        InlineData("Deflate, differences, big-endian")
    ]
    public void LibTiffReadsOurUncompressedAndDeflatedMosaics(string form)
    {
        using var folder = new TemporaryFolder();
        DngFrame frame = TestFrames.Noisy(150, 98, 12);
        string path = folder.File("frame.dng");
        DngWriter.Write(path, frame, TestFrames.Forms[form]);
        Assert.Equal(frame.Samples.ToArray(), ReadByLibTiff(path));
    }

    public static TheoryData<Compression, Predictor, bool, int> PlainFiles
    {
        get
        {
            var cases = new TheoryData<Compression, Predictor, bool, int>();
            foreach (
                Compression compression in new[]
                {
                    Compression.NONE,
                    Compression.LZW,
                    Compression.ADOBE_DEFLATE,
                    Compression.DEFLATE,
                }
            )
            foreach (
                Predictor predictor in compression == Compression.NONE
                    ? [Predictor.NONE]
                    : new[] { Predictor.NONE, Predictor.HORIZONTAL }
            )
            // LibTiff.NET 2.4.660 swaps the bytes before it takes differences, and cannot read such files itself; ours
            // of that kind it reads.
            foreach (bool bigEndian in predictor == Predictor.HORIZONTAL ? [false] : new[] { false, true })
            foreach (int tile in new[] { 0, 32 })
                cases.Add(compression, predictor, bigEndian, tile);
            return cases;
        }
    }

    [Theory, MemberData(nameof(PlainFiles))]
    public void WeReadThePlainSixteenBitFilesThatLibTiffWrites(
        Compression compression,
        Predictor predictor,
        bool bigEndian,
        int tile
    )
    {
        using var folder = new TemporaryFolder();
        DngFrame frame = TestFrames.Noisy(150, 400, 16); // long enough for LZW to fill its table and begin anew
        string path = folder.File("frame.tif");
        WriteByLibTiff(path, frame, compression, predictor, bigEndian, tile);
        using RawFile file = RawFile.Open(path);
        var read = new ushort[150 * 400];
        file.ReadRows(0, read);
        Assert.Equal(frame.Samples.ToArray(), read);
        Assert.Equal(
            (RawContainer.Tiff, bigEndian, tile > 0),
            (file.Storage.Container, file.Storage.IsBigEndian, file.Storage.IsTiled)
        );
        Assert.Null(file.Mosaic.ColourFilter);
    }

    private static void WriteByLibTiff(
        string path,
        DngFrame frame,
        Compression compression,
        Predictor predictor,
        bool bigEndian,
        int tile
    )
    {
        using Tiff tiff = Tiff.Open(path, bigEndian ? "wb" : "wl");
        tiff.SetField(TiffTag.IMAGEWIDTH, frame.Width);
        tiff.SetField(TiffTag.IMAGELENGTH, frame.Height);
        tiff.SetField(TiffTag.BITSPERSAMPLE, 16);
        tiff.SetField(TiffTag.SAMPLESPERPIXEL, 1);
        tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.MINISBLACK);
        tiff.SetField(TiffTag.PLANARCONFIG, PlanarConfig.CONTIG);
        tiff.SetField(TiffTag.COMPRESSION, compression);
        if (predictor != Predictor.NONE)
            tiff.SetField(TiffTag.PREDICTOR, predictor);
        if (tile > 0)
            WriteTiles(tiff, frame, tile);
        else
        {
            tiff.SetField(TiffTag.ROWSPERSTRIP, 170);
            for (int row = 0; row < frame.Height; row++)
                Assert.True(
                    tiff.WriteScanline(
                        MemoryMarshal.AsBytes(frame.Samples.Span.Slice(row * frame.Width, frame.Width)).ToArray(),
                        row
                    )
                );
        }
    }

    private static void WriteTiles(Tiff tiff, DngFrame frame, int side)
    {
        tiff.SetField(TiffTag.TILEWIDTH, side);
        tiff.SetField(TiffTag.TILELENGTH, side);
        for (int top = 0; top < frame.Height; top += side)
        for (int left = 0; left < frame.Width; left += side)
        {
            var tile = new ushort[side * side];
            for (int i = 0; i < tile.Length; i++)
                if (top + (i / side) < frame.Height && left + (i % side) < frame.Width)
                    tile[i] = frame.Samples.Span[((top + (i / side)) * frame.Width) + left + (i % side)];
            Assert.True(tiff.WriteTile(MemoryMarshal.AsBytes(tile.AsSpan()).ToArray(), left, top, 0, 0) > 0);
        }
    }

    private static ushort[] ReadByLibTiff(string path)
    {
        using Tiff tiff = Tiff.Open(path, "r");
        int Field(TiffTag tag) => tiff.GetField(tag)[0].ToInt();
        (int width, int height, int bits) = (
            Field(TiffTag.IMAGEWIDTH),
            Field(TiffTag.IMAGELENGTH),
            Field(TiffTag.BITSPERSAMPLE)
        );
        int partWidth = tiff.IsTiled() ? Field(TiffTag.TILEWIDTH) : width;
        int partHeight = tiff.IsTiled() ? Field(TiffTag.TILELENGTH) : Field(TiffTag.ROWSPERSTRIP);
        int across = (width + partWidth - 1) / partWidth;
        int rowBytes = ((partWidth * bits) + 7) / 8;
        var samples = new ushort[width * height];
        var bytes = new byte[rowBytes * partHeight];
        var row = new ushort[partWidth];
        for (int part = 0; part < (tiff.IsTiled() ? tiff.NumberOfTiles() : tiff.NumberOfStrips()); part++)
        {
            int read = tiff.IsTiled()
                ? tiff.ReadEncodedTile(part, bytes, 0, bytes.Length)
                : tiff.ReadEncodedStrip(part, bytes, 0, bytes.Length);
            (int top, int left) = (part / across * partHeight, part % across * partWidth);
            for (int y = 0; y * rowBytes < read && top + y < height; y++)
            {
                Span<byte> stored = bytes.AsSpan(y * rowBytes, rowBytes);
                if (bits == 16)
                    // LibTiff hands out words in the machine's order
                    MemoryMarshal.Cast<byte, ushort>(stored).CopyTo(row);
                else
                    PackedBits.Unpack(stored, row, bits);
                row.AsSpan(0, Math.Min(partWidth, width - left)).CopyTo(samples.AsSpan(((top + y) * width) + left));
            }
        }
        return samples;
    }
}
