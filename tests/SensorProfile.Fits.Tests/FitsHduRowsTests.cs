namespace SensorProfile.Fits.Tests;

/// <summary>Random access to rows, every target type, and the refusals.</summary>
public sealed class FitsHduRowsTests
{
    [Fact]
    public void AnyRangeOfRowsIsThatPartOfTheWhole()
    {
        ushort[] all = [.. Enumerable.Range(0, 37 * 11).Select(i => (ushort)(i * 7919))];
        With(new FitsImage<ushort>(37, 11, all), hdu =>
        {
            for (int first = 0; first <= 11; first++)
            {
                for (int rows = 0; first + rows <= 11; rows++)
                {
                    var part = new ushort[37 * rows];
                    hdu.ReadRows(first, part);
                    Assert.Equal(all.AsSpan(first * 37, rows * 37).ToArray(), part);
                }
            }
        });
    }

    [Fact]
    public void ALargeImageIsTheSameInEveryTypeThatHoldsIt()
    {
        // longer than every step inside
        ushort[] all = [.. Enumerable.Range(0, 1001 * 301).Select(i => (ushort)(i * 7919))];
        With(new FitsImage<ushort>(1001, 301, all), hdu =>
        {
            var (shorts, ints, longs, ulongs, floats, doubles) = (
                new ushort[all.Length],
                new int[all.Length],
                new long[all.Length],
                new ulong[all.Length],
                new float[all.Length],
                new double[all.Length]
            );
            hdu.ReadRows(0, shorts);
            hdu.ReadRows(0, ints);
            hdu.ReadRows(0, longs);
            hdu.ReadRows(0, ulongs);
            hdu.ReadRows(0, floats);
            hdu.ReadRows(0, doubles);
            Assert.Equal(all, shorts);
            Assert.Equal(all.Select(v => (int)v), ints);
            Assert.Equal(all.Select(v => (long)v), longs);
            Assert.Equal(all.Select(v => (ulong)v), ulongs);
            Assert.Equal(all.Select(v => (float)v), floats);
            Assert.Equal(all.Select(v => (double)v), doubles);
        });
    }

    [Fact]
    public void ManyThreadsReadTheSame()
    {
        ushort[] all = [.. Enumerable.Range(0, 500 * 64).Select(i => (ushort)(i * 31))];
        With(new FitsImage<ushort>(500, 64, all), hdu =>
        {
            var read = new ushort[all.Length];
            Parallel.For(0, 64, row => hdu.ReadRows(row, read.AsSpan(row * 500, 500)));
            Assert.Equal(all, read);
        });
    }

    [Fact]
    public void APixelThatDoesNotFitIsNamed()
    {
        With(new FitsImage<short>(3, 2, new short[] { 1, 2, 3, 4, -5, 6 }), hdu =>
        {
            var error = Assert.Throws<FitsFormatException>(() => hdu.ReadRows(0, new ushort[6]));
            Assert.Equal(
                "a.fits, HDU 0: the pixel in column 2, row 2 is -5, which unsigned 16-bit integers cannot hold. "
                    + "Read the image as floating-point numbers, or leave the file out.",
                error.Message
            );
            hdu.ReadRows(0, new ushort[3]);
            hdu.ReadRows(0, new int[6]);
        });
        With(new FitsImage<double>(2, 1, new[] { 7.0, 0.5 }), hdu =>
            Assert.Contains(
                "column 2, row 1 is 0.5",
                Assert.Throws<FitsFormatException>(() => hdu.ReadRows(0, new int[2])).Message,
                StringComparison.Ordinal
            )
        );
        With(new FitsImage<double>(1, 1, new[] { 1e300 }), hdu =>
            Assert.Throws<FitsFormatException>(() => hdu.ReadRows(0, new float[1]))
        );
        With(new FitsImage<float>(1, 1, new[] { float.NaN }), hdu =>
            Assert.Throws<FitsFormatException>(() => hdu.ReadRows(0, new ushort[1]))
        );
    }

    [Fact]
    public void FloatsThatHoldIntegersCanBeReadAsIntegers() =>
        With(new FitsImage<float>(3, 1, new[] { 0f, 65535f, 1024f }), hdu =>
        {
            var pixels = new ushort[3];
            hdu.ReadRows(0, pixels);
            Assert.Equal([0, 65535, 1024], pixels);
        });

    [Fact]
    public void BlankPixelsAreNaNInFloatsAndRefusedInIntegers() =>
        With(new FitsImage<ushort>(3, 1, new ushort[] { 5, 0, 65535 }, [FitsCard.Of("BLANK", -32768)]), hdu =>
        {
            var pixels = new float[3];
            hdu.ReadRows(0, pixels);
            Assert.Equal([5f, float.NaN, 65535f], pixels);
            var error = Assert.Throws<FitsFormatException>(() => hdu.ReadRows(0, new ushort[3]));
            Assert.Contains("column 2, row 1 is blank (BLANK = -32768)", error.Message, StringComparison.Ordinal);
            Assert.Throws<FitsFormatException>(() => hdu.ReadRows(0, new int[3]));
        });

    [Fact]
    public void RowsOutsideTheImageAreRefused() => With(new FitsImage<ushort>(3, 2, new ushort[6]), hdu =>
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => hdu.ReadRows(-1, new ushort[3]));
            Assert.Throws<ArgumentOutOfRangeException>(() => hdu.ReadRows(2, new ushort[3]));
            Assert.Throws<ArgumentOutOfRangeException>(() => hdu.ReadRows(1, new ushort[6]));
            Assert.Throws<ArgumentOutOfRangeException>(() => hdu.ReadRows(int.MaxValue, new ushort[6]));
            Assert.Throws<ArgumentOutOfRangeException>(() => hdu.ReadRows(0, new ushort[3], plane: 1));
            Assert.Throws<ArgumentException>(() => hdu.ReadRows(0, new ushort[4]));
        });

    private static void With<T>(FitsImage<T> image, Action<FitsHdu> test)
        where T : unmanaged
    {
        using var folder = new TemporaryFolder();
        FitsWriter.Write(folder.File("a.fits"), image, durable: false);
        using FitsFile file = FitsFile.Open(folder.File("a.fits"));
        test(file.RequireFirstImage());
    }
}
