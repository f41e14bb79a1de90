using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

namespace SensorProfile.Fits.Tests.Tiles;

/// <summary>Descriptors that point where no bytes are.</summary>
public sealed class TileTableTests
{
    /// <summary>
    /// A tile without bytes whose offset is negative passed on opening and ended as ArgumentOutOfRangeException.
    /// </summary>
    [Theory]
    [InlineData(0, -8)]
    [InlineData(0, int.MaxValue)]
    public void ATileWithoutBytesIsNamedWhateverItsOffset(int count, int offset)
    {
        using var folder = new TemporaryFolder();
        byte[] bytes = Seed();
        Point(bytes, count, offset);
        File.WriteAllBytes(folder.File("a.fits"), bytes);
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        FitsFormatException refusal = Assert.Throws<FitsFormatException>(() => ReadFirstRow(file));
        Assert.Equal(
            "a.fits, HDU 1: tile 1 cannot be unpacked: it has no bytes. "
                + "Copy the file again from its origin, or leave it out.",
            refusal.Message
        );
    }

    /// <summary>What was checked on opening may be something else when the tile is read.</summary>
    [Theory]
    [InlineData(-1, 0)]
    [InlineData(20, -4)]
    [InlineData(int.MaxValue, 0)]
    public void ADescriptorThatChangesAfterOpeningIsNamed(int count, int offset)
    {
        using var folder = new TemporaryFolder();
        byte[] bytes = Seed();
        File.WriteAllBytes(folder.File("a.fits"), bytes);
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        Point(bytes, count, offset);
        using (FileStream again = new(folder.File("a.fits"), FileMode.Open, FileAccess.Write, FileShare.ReadWrite))
            again.Write(bytes);
        Assert.Equal(
            "a.fits, HDU 1: tile 1 cannot be unpacked: its descriptor has changed since the file was "
                + "opened. Copy the file again from its origin, or leave it out.",
            Assert.Throws<FitsFormatException>(() => ReadFirstRow(file)).Message
        );
    }

    private static void ReadFirstRow(FitsFile file)
    {
        FitsHdu image = file.RequireFirstImage();
        image.ReadRows(0, new ushort[image.Width]);
    }

    /// <summary>Rewrites the descriptor of the first tile: it opens the table, whose header the block before ends.</summary>
    private static void Point(byte[] bytes, int count, int offset)
    {
        int table = bytes.AsSpan().IndexOf("XTENSION"u8),
            end =
                table
                + Encoding
                    .ASCII.GetString(bytes, table, bytes.Length - table)
                    .IndexOf("END     ", StringComparison.Ordinal),
            data = (end / 2880 + 1) * 2880;
        BinaryPrimitives.WriteInt32BigEndian(bytes.AsSpan(data), count);
        BinaryPrimitives.WriteInt32BigEndian(bytes.AsSpan(data + 4), offset);
    }

    private static byte[] Seed()
    {
        using FileStream packed = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "rice-u16.fits.gz"));
        using var gzip = new GZipStream(packed, CompressionMode.Decompress);
        using var plain = new MemoryStream();
        gzip.CopyTo(plain);
        return plain.ToArray();
    }
}
