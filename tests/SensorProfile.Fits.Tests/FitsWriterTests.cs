using System.Runtime.InteropServices;
using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fits.Tests;

/// <summary>What is written is read back bit by bit, by us and by others.</summary>
public sealed class FitsWriterTests
{
    private const string Python = "/usr/bin/python3"; // of the system: its packages are Debian's

    private static readonly FitsCard LongCard = FitsCard.Of(
        "LONGSTR",
        string.Concat(Enumerable.Repeat("Ottermere Moor Observing Group's camera Tarn-9M; ", 6)) + "end",
        "long"
    );

    private static readonly FitsCard[] Cards =
    [
        FitsCard.Of("OBJECT", "dark"),
        FitsCard.Of("EXPTIME", 0.1, "exposure, s"),
        FitsCard.Of("CCD-TEMP", -10.0, "sensor temperature, degrees Celsius"),
        FitsCard.Of("GAIN", 100),
        FitsCard.Of("OBSERVER", "O'Hara & Müller"),
        FitsCard.Of("TINY", 6.4e-5),
        FitsCard.Of("HUGE", -1.7976931348623157e308, "x"),
        LongCard,
        FitsCard.OfComment(
            "A comment that is longer than the seventy-two characters of one record, so that it runs over two."
        ),
    ];

    [Fact]
    public void Bytes() => RoundTrip(Noise<byte>(1), FitsPixelType.UInt8);

    [Fact]
    public void SignedBytes() => RoundTrip(Noise<sbyte>(2), FitsPixelType.Int8);

    [Fact]
    public void Shorts() => RoundTrip(Noise<short>(3), FitsPixelType.Int16);

    [Fact]
    public void UnsignedShorts() => RoundTrip(Noise<ushort>(4), FitsPixelType.UInt16);

    [Fact]
    public void Ints() => RoundTrip(Noise<int>(5), FitsPixelType.Int32);

    [Fact]
    public void UnsignedInts() => RoundTrip(Noise<uint>(6), FitsPixelType.UInt32);

    [Fact]
    public void Longs() => RoundTrip(Noise<long>(7), FitsPixelType.Int64);

    [Fact]
    public void UnsignedLongs() => RoundTrip(Noise<ulong>(8), FitsPixelType.UInt64);

    [Fact]
    public void Floats() =>
        RoundTrip(
            [
                1f,
                -2.5f,
                float.NaN,
                float.NegativeInfinity,
                float.Epsilon,
                -0f,
                .. Noise<short>(9)[6..].Select(v => v * 0.37f),
            ],
            FitsPixelType.Float32
        );

    [Fact]
    public void Doubles() =>
        RoundTrip(
            [Math.PI, double.NaN, double.MaxValue, .. Noise<int>(10)[3..].Select(v => v * 0.37)],
            FitsPixelType.Float64
        );

    [Fact]
    public void CardsComeBackAsTheyWereGiven()
    {
        using var folder = new TemporaryFolder();
        FitsWriter.Write(folder.File("a.fits"), Image(Noise<ushort>(1)));
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        FitsHeader header = file.Hdus[0].Header;
        Assert.Empty(file.Warnings);
        Assert.Equal(
            (0.1, -10.0, 6.4e-5, -1.7976931348623157e308),
            (header.Number("EXPTIME"), header.Number("CCD-TEMP"), header.Number("TINY"), header.Number("HUGE"))
        );
        Assert.Equal((100L, "O'Hara & M?ller"), (header.Integer("GAIN"), header.Text("OBSERVER")));
        Assert.Equal((LongCard.Value, "long"), (header.Text("LONGSTR"), header.Card("LONGSTR")!.Comment));
        Assert.Equal("exposure, s", header.Card("EXPTIME")!.Comment);
        Assert.Equal(
            ["COMMENT", "COMMENT"],
            header.Where(card => card.Kind == FitsValueKind.Commentary).Select(card => card.Keyword)
        );
    }

    [Fact]
    public void LongStringsOfQuotesAreNotTornApart()
    {
        using var folder = new TemporaryFolder();
        for (int length = 60; length < 80; length++)
        {
            string text = new string('x', length - 60) + new string('\'', length) + "end";
            FitsWriter.Write(
                folder.File($"{length}.fits"),
                new FitsImage<byte>([], default, [FitsCard.Of("QUOTES", text)])
            );
            using FitsFile file = FitsFile.Open(folder.File($"{length}.fits"));
            Assert.Equal(text, file.Hdus[0].Header.Text("QUOTES"));
        }
    }

    [Fact]
    public void SeveralImagesBecomeExtensions()
    {
        using var folder = new TemporaryFolder();
        FitsWriter.Write(
            folder.File("a.fits"),
            [
                new FitsImage<byte>([], default),
                new FitsImage<ushort>(20, 15, Noise<ushort>(1), name: "RAW"),
                new FitsImage<float>([3, 2, 2], new float[12], name: "CUBE"),
            ]
        );
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        Assert.Empty(file.Warnings);
        Assert.Equal([null, "RAW", "CUBE"], file.Hdus.Select(hdu => hdu.Name));
        Assert.Equal([3L, 2, 2], file.Hdus[2].Axes);
        Assert.All(file.Hdus, hdu => Assert.True(hdu.VerifyChecksum(out _)));
        Assert.Equal(1, file.RequireFirstImage().Index);
    }

    [Fact]
    public void AnExistingFileIsKeptUnlessItMayBeReplaced()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("a.fits");
        FitsWriter.Write(path, Image(Noise<ushort>(1)));
        byte[] before = File.ReadAllBytes(path);
        Assert.Throws<IOException>(() => FitsWriter.Write(path, Image(Noise<ushort>(2))));
        Assert.Equal(before, File.ReadAllBytes(path));
        FitsWriter.Write(path, Image(Noise<ushort>(2)), overwrite: true);
        Assert.NotEqual(before, File.ReadAllBytes(path));
        Assert.Single(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void AFailedWriteLeavesNothingBehindAndNamesTheFile()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("a.fits");
        const long moreThanAnyDiskHolds = 1L << 60;
        var full = Assert.ThrowsAny<IOException>(() =>
            NewFitsFile.Write(path, moreThanAnyDiskHolds, false, false, _ => { })
        );
        Assert.StartsWith(path + " could not be written: ", full.Message, StringComparison.Ordinal);
        var broken = Assert.Throws<IOException>(() =>
            NewFitsFile.Write(path, 100, false, false, _ => throw new IOException("No space left on device."))
        );
        Assert.Equal(
            $"{path} could not be written: No space left on device. Nothing was left under that name; make room or choose another folder.",
            broken.Message
        );
        Assert.Empty(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void WrongInputIsRefused()
    {
        Assert.Throws<ArgumentException>(() => new FitsImage<ushort>(3, 2, new ushort[5]));
        Assert.Throws<ArgumentException>(() =>
            new FitsImage<ushort>([int.MaxValue, int.MaxValue, int.MaxValue], new ushort[1])
        );
        Assert.Throws<NotSupportedException>(() => new FitsImage<char>(1, 1, new char[1]));
        Assert.Throws<ArgumentException>(() => FitsCard.Of("lower", 1));
        Assert.Throws<ArgumentException>(() => FitsCard.Of("TOOLONGKEY", 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => FitsCard.Of("A", double.NaN));
    }

    [NeedsProgramFact("fitsverify", "fitsverify")]
    public void FitsverifyFindsNothing()
    {
        using var folder = new TemporaryFolder();
        FitsWriter.Write(
            folder.File("a.fits"),
            [
                Image(Noise<ushort>(1)),
                new FitsImage<float>(30, 10, new float[300], [FitsCard.Of("BUNIT", "electron")], "MAP"),
                new FitsImage<ulong>([4, 3, 2], new ulong[24], null, "CUBE"),
            ]
        );
        var (exit, output) = ExternalTool.Run("fitsverify", folder.File("a.fits"));
        Assert.Contains("0 warning(s) and 0 error(s)", output, StringComparison.Ordinal);
        Assert.Equal(0, exit);
    }

    [NeedsProgramFact(Python, "python3-astropy", "-c", "import astropy")]
    public void AstropyReadsTheSame()
    {
        using var folder = new TemporaryFolder();
        ushort[] pixels = Noise<ushort>(1);
        float[] floats = [.. pixels.Select(v => v * 0.25f)];
        FitsWriter.Write(folder.File("a.fits"), [Image(pixels), new FitsImage<float>(20, 15, floats, name: "MAP")]);
        const string script = """
            import sys, numpy, warnings
            warnings.simplefilter("error")
            from astropy.io import fits
            with fits.open(sys.argv[1], checksum=True) as f:
                h = f[0].header
                print(f[0].data.dtype.name, f[0].data.astype(numpy.int64).sum(), f[0].data[1, 2], f["MAP"].data[14, 19])
                print(repr(h["EXPTIME"]), repr(h["HUGE"]), h["OBSERVER"], len(h["LONGSTR"]), h["LONGSTR"][-3:])
            """;
        var (_, output) = ExternalTool.Run(Python, "-c", script, folder.File("a.fits"));
        long sum = pixels.Sum(v => (long)v);
        Assert.Equal(
            FormattableString.Invariant(
                $"uint16 {sum} {pixels[22]} {floats[299]}\n0.1 -1.7976931348623157e+308 O'Hara & M?ller {LongCard.Value.Length} end\n"
            ),
            output
        );
    }

    private static void RoundTrip<T>(T[] pixels, FitsPixelType type)
        where T : unmanaged
    {
        using var folder = new TemporaryFolder();
        FitsWriter.Write(folder.File("a.fits"), Image(pixels));
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        FitsHdu hdu = Assert.Single(file.Hdus);
        Assert.Equal(type, hdu.PixelType);
        Assert.True(hdu.VerifyChecksum(out _));
        T[] back = PhysicalPixels.Read<T>(hdu);
        Assert.Equal(MemoryMarshal.AsBytes<T>(pixels).ToArray(), MemoryMarshal.AsBytes<T>(back).ToArray());
        FitsWriter.Write(folder.File("b.fits"), new FitsImage<T>(20, 15, back, [.. hdu.Header]));
        Assert.Equal(File.ReadAllBytes(folder.File("a.fits")), File.ReadAllBytes(folder.File("b.fits")));
    }

    private static FitsImage<T> Image<T>(T[] pixels)
        where T : unmanaged => new(20, 15, pixels, Cards);

    private static T[] Noise<T>(int seed)
        where T : unmanaged
    {
        var pixels = new T[300];
        new Random(seed).NextBytes(MemoryMarshal.AsBytes(pixels.AsSpan()));
        return pixels;
    }
}
