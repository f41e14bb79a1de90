using System.IO.Compression;

namespace SensorProfile.Fits.Tests.Bytes;

/// <summary>
/// gzip'd files: recognised by content, unpacked once, any row in any order, never further than the headers say.
/// </summary>
public sealed class GzipTests
{
    [Theory]
    [InlineData(100, 30)] // stays in memory
    [InlineData(1000, 1500)] // 3 MB: goes through the temporary file
    public void RowsComeInAnyOrderFromAnyThread(int width, int height)
    {
        using var folder = new TemporaryFolder();
        ushort[] pixels = [.. Enumerable.Range(0, width * height).Select(i => (ushort)(i * 40503 >> 3))];
        FitsWriter.Write(folder.File("a.fits"), new FitsImage<ushort>(width, height, pixels), durable: false);
        Pack(folder.File("a.fits"), folder.File("without-extension"));
        using FitsFile file = FitsFile.Open(folder.File("without-extension"));
        FitsHdu image = file.RequireFirstImage();
        Assert.Empty(file.Warnings);
        var read = new ushort[pixels.Length];
        Parallel.For(0, height, i => image.ReadRows(height - 1 - i, read.AsSpan((height - 1 - i) * width, width)));
        Assert.Equal(pixels, read);
        Assert.True(image.VerifyChecksum(out _));
    }

    [DataFact("fits-zoo")]
    public void ABombCostsNeitherTimeNorMemory()
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        using (FitsFile file = FitsFile.Open(ZooFile.Path("bomb-trailing.fits.gz")))
        {
            var row = new ushort[16];
            file.RequireFirstImage().ReadRows(15, row);
            Assert.Contains(file.Warnings, w => w.Code == FitsWarningCodes.ExtraBytes);
        }

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1 << 20);
    }

    [DataFact("fits-zoo")]
    public void ADamagedArchiveIsNamed()
    {
        byte[] packed = File.ReadAllBytes(ZooFile.Path("uint16.fits.gz"));
        for (int i = 20; i < 60; i++)
            packed[i] ^= 0x5A;
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder.File("a.fits.gz"), packed);
        Assert.Contains(
            "gzip",
            Assert.Throws<FitsFormatException>(() => FitsFile.Open(folder.File("a.fits.gz"))).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AHeaderThatDeclaresMoreThanTheArchiveCanHoldIsRefusedWithoutUnpacking()
    {
        using var folder = new TemporaryFolder();
        string header = string.Concat(
                new[]
                {
                    "SIMPLE  =                    T",
                    "BITPIX  =                   16",
                    "NAXIS   =                    2",
                    "NAXIS1  =              1000000",
                    "NAXIS2  =              1000000",
                    "END",
                }.Select(card => card.PadRight(80))
            )
            .PadRight(2880);
        File.WriteAllText(folder.File("a.fits"), header);
        Pack(folder.File("a.fits"), folder.File("a.fits.gz"));
        var error = Assert.Throws<FitsFormatException>(() => FitsFile.Open(folder.File("a.fits.gz")));
        Assert.Equal("NAXIS2", error.Location.Keyword);
    }

    private static void Pack(string from, string to)
    {
        using FileStream packed = File.Create(to);
        using var gzip = new GZipStream(packed, CompressionLevel.Fastest);
        gzip.Write(File.ReadAllBytes(from));
    }
}
