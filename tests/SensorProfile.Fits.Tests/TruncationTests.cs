using System.IO.Compression;

namespace SensorProfile.Fits.Tests;

/// <summary>One byte less is seen, whatever the form of the file.</summary>
public sealed class TruncationTests
{
    private const int Width = 13,
        Height = 7;

    [Fact]
    public void AFileThatLacksTheLastByteOfItsPixelsIsRefused()
    {
        using var folder = new TemporaryFolder();
        byte[] whole = Written(folder);
        int pixels = 2880 + (Width * Height * sizeof(ushort));
        File.WriteAllBytes(folder.File("cut.fits"), whole[..(pixels - 1)]);
        FitsFormatException refusal = Assert.Throws<FitsFormatException>(() => FitsFile.Open(folder.File("cut.fits")));
        Assert.StartsWith("cut.fits", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("1", refusal.Message, StringComparison.Ordinal);
        File.WriteAllBytes(folder.File("cut.fits"), whole[..pixels]); // only the padding is missing
        using FitsFile file = FitsFile.Open(folder.File("cut.fits"));
        Assert.NotEmpty(file.Warnings);
        Assert.Equal(Width * Height - 1, Row(file, Height - 1)[Width - 1]);
    }

    [Fact]
    public void AFileThatIsCutWhileItIsReadIsNamed()
    {
        using var folder = new TemporaryFolder();
        byte[] whole = Written(folder);
        using FitsFile file = FitsFile.Open(folder.File("whole.fits"));
        using (
            FileStream shorter = new(folder.File("whole.fits"), FileMode.Open, FileAccess.Write, FileShare.ReadWrite)
        )
            shorter.SetLength(2880 + (Width * Height * sizeof(ushort)) - 1);
        Assert.Equal(0, Row(file, 0)[0]);
        FitsFormatException refusal = Assert.Throws<FitsFormatException>(() => Row(file, Height - 1));
        Assert.StartsWith("whole.fits", refusal.Message, StringComparison.Ordinal);
        Assert.NotEmpty(whole);
    }

    [Fact]
    public void AnArchiveThatEndsWithinItsPixelsIsRefused()
    {
        using var folder = new TemporaryFolder();
        byte[] whole = Written(folder);
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.NoCompression, leaveOpen: true))
            gzip.Write(whole);
        byte[] bytes = packed.ToArray();
        int padding = whole.Length - 2880 - (Width * Height * sizeof(ushort));
        // stored without compression: the bytes of the archive lie where those of the file do, eight behind them
        File.WriteAllBytes(folder.File("cut.fits.gz"), bytes[..^(8 + padding + 1)]);
        Assert.Throws<FitsFormatException>(() =>
        {
            using FitsFile file = FitsFile.Open(folder.File("cut.fits.gz"));
            Row(file, Height - 1);
        });
    }

    private static ushort[] Row(FitsFile file, int y)
    {
        var row = new ushort[Width];
        file.RequireFirstImage().ReadRows(y, row);
        return row;
    }

    private static byte[] Written(TemporaryFolder folder)
    {
        ushort[] pixels = [.. Enumerable.Range(0, Width * Height).Select(i => (ushort)i)];
        FitsWriter.Write(folder.File("whole.fits"), new FitsImage<ushort>(Width, Height, pixels));
        return File.ReadAllBytes(folder.File("whole.fits"));
    }
}
