using System.IO.Compression;

namespace SensorProfile.Fits.Tests;

/// <summary>
/// Damaged files give a FitsFormatException or can be read; nothing else, and never much memory. The seeds are fixed.
/// </summary>
public sealed class FuzzTests
{
    private const int MutationsPerFile = 60;

    // all reads of one small file together; the zoo's files stay below 60 kB
    private const long LargestAllocation = 64L << 20;

    public static TheoryData<string> Files => Named();

    [DataTheory("fits-zoo"), MemberData(nameof(Files))]
    public void AMutatedFileIsReadOrRefused(string name)
    {
        byte[] original = File.ReadAllBytes(ZooFile.Path(name));
        var random = new Random(original.Length);
        using var folder = new TemporaryFolder();
        for (int i = 0; i < MutationsPerFile; i++)
        {
            byte[] mutated = [.. original];
            int changes = 1 + random.Next(6);
            for (int change = 0; change < changes && mutated.Length > 0; change++)
                Mutate(mutated, random);
            Try(folder.File($"{i}.fits"), mutated);
        }
    }

    [DataTheory("fits-zoo"), MemberData(nameof(Files))]
    public void ATruncatedFileIsReadOrRefused(string name)
    {
        byte[] original = File.ReadAllBytes(ZooFile.Path(name));
        using var folder = new TemporaryFolder();
        for (int i = 0; i <= 40; i++)
            Try(folder.File($"{i}.fits"), original[..(int)((long)original.Length * i / 40)]);
    }

    [DataTheory("fits-zoo"), MemberData(nameof(Files))]
    public void AnUnpackedMutationThatIsPackedAgainIsReadOrRefused(string name)
    {
        byte[] original = File.ReadAllBytes(ZooFile.Path(name));
        var random = new Random(original.Length + 1);
        using var folder = new TemporaryFolder();
        for (int i = 0; i < 5; i++)
        {
            byte[] mutated = [.. original];
            if (mutated.Length > 0)
                Mutate(mutated, random);
            using var packed = new MemoryStream();
            using (var gzip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true))
                gzip.Write(mutated);
            Try(folder.File($"{i}.fits.gz"), packed.ToArray());
        }
    }

    [Fact]
    public void AHeaderWithoutEndIsGivenUpSoonAndCheaply()
    {
        using var folder = new TemporaryFolder();
        byte[] blank = new byte[40_000_000];
        blank.AsSpan().Fill((byte)' ');
        "SIMPLE  =                    T"u8.CopyTo(blank);
        Try(folder.File("a.fits"), blank, 256L << 20);
        Assert.Throws<FitsFormatException>(() => FitsFile.Open(folder.File("a.fits")));
    }

    private static void Mutate(byte[] bytes, Random random)
    {
        int at = random.Next(bytes.Length);
        switch (random.Next(4))
        {
            case 0:
                bytes[at] ^= (byte)(1 << random.Next(8));
                break;
            case 1:
                bytes[at] = (byte)random.Next(256);
                break;
            case 2:
                bytes[at] = (byte)"0123456789-+.,'/ TFE"[random.Next(20)];
                break;
            default:
                byte[] token = System.Text.Encoding.ASCII.GetBytes(
                    new[] { "99999999999", "-1", "=", "'", "END     ", "NAXIS   ", "16", "1E400" }[random.Next(8)]
                );
                token.AsSpan(0, Math.Min(token.Length, bytes.Length - at)).CopyTo(bytes.AsSpan(at));
                break;
        }
    }

    private static void Try(string path, byte[] bytes, long largestAllocation = LargestAllocation)
    {
        File.WriteAllBytes(path, bytes);
        long before = GC.GetAllocatedBytesForCurrentThread();
        try
        {
            using FitsFile file = FitsFile.Open(path);
            foreach (FitsHdu hdu in file.Hdus)
                Read(hdu);
        }
        catch (FitsFormatException e)
        {
            Assert.StartsWith(Path.GetFileName(path), e.Message, StringComparison.Ordinal);
        }

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, largestAllocation);
    }

    private static void Read(FitsHdu hdu)
    {
        hdu.VerifyChecksum(out _);
        if (!hdu.HasPixels || (long)hdu.Width * sizeof(double) > LargestAllocation / 8)
            return;
        var row = new double[hdu.Width];
        for (int y = 0; y < Math.Min(hdu.Height, 50); y++)
            hdu.ReadRows(y, row, hdu.Planes - 1);
    }

    private static TheoryData<string> Named()
    {
        var names = new TheoryData<string>();
        if (TestData.Find("fits-zoo") is null)
            names.Add("(none)");
        else
            foreach (string name in ZooFile.Files.Keys.Where(name => name != "bomb-trailing.fits.gz"))
                names.Add(name);
        return names;
    }
}
