namespace SensorProfile.Fits.Tests.Tiles;

/// <summary>
/// Every codec against cfitsio's own unpacker, bit by bit: odd sizes, edge tiles, whole-image tiles, lossy and
/// lossless.
/// </summary>
public sealed class TileCompressedImageTests
{
    [NeedsProgramFact("fpack", "libcfitsio-bin")]
    public void IntegersAreUnpackedAsCfitsioDoes()
    {
        foreach (
            string options in new[]
            {
                "-r",
                "-r -t 23,16",
                "-r -w",
                "-g",
                "-g -w",
                "-g2",
                "-g2 -t 50,7",
                "-h -s 0",
                "-h -s 0 -w",
                "-h -s -6",
            }
        )
        {
            Compare(options, Pixels<ushort>(i => (ushort)(30000 + Noise(i, 4000))), AsLong);
            Compare(options, Pixels<short>(i => (short)Noise(i, 300)), AsLong);
            Compare(options, Pixels(i => Noise(i, 100_000)), AsLong);
            if (!options.Contains("-s -6", StringComparison.Ordinal))
                Compare(options, Pixels<byte>(i => (byte)Noise(i, 90)), AsLong);
        }
    }

    [NeedsProgramFact("fpack", "libcfitsio-bin")]
    public void RunsJumpsAndMasksAreUnpackedAsCfitsioDoes()
    {
        Compare("-r", Pixels<ushort>(i => i % 97 == 0 ? (ushort)65535 : (ushort)0), AsLong);
        Compare("-r", Pixels(i => i % 89 == 0 ? int.MaxValue : int.MinValue), AsLong);
        Compare("-r", Pixels<ushort>(_ => 1000), AsLong);
        Compare("-p", Pixels<short>(i => (short)(i % 53 < 5 ? i % 7 * 900 : 0)), AsLong);
        Compare("-p -w", Pixels<byte>(i => (byte)(i / 300 % 3)), AsLong);
    }

    [NeedsProgramFact("fpack", "libcfitsio-bin")]
    public void FloatsAreUnpackedAsCfitsioDoes()
    {
        foreach (
            string options in new[]
            {
                "-r -q 4",
                "-r -qz 4",
                "-r -q0 8",
                "-g -q 0",
                "-g2 -q 0",
                "-g -q 8",
                "-g2 -q 8",
                "-h -q 8 -t 101,16",
                "-r -q 16 -w",
            }
        )
        {
            Compare(options, Pixels(i => i % 311 == 7 ? float.NaN : (Noise(i, 1000) / 8f) + 100), AsDouble);
            Compare(options, Pixels(i => i % 317 == 7 ? 0.0 : (Noise(i, 1000) / 8.0) + 100), AsDouble);
        }
    }

    [NeedsProgramFact("fpack", "libcfitsio-bin")]
    public void ADamagedTileIsNamedAndTheOthersStayReadable()
    {
        using var folder = new TemporaryFolder();
        string path = Pack(folder, "-r", Pixels<ushort>(i => (ushort)Noise(i, 4000)));
        byte[] bytes = File.ReadAllBytes(path);
        // tile 2 has no bytes
        using (FitsFile good = FitsFile.Open(path))
            bytes.AsSpan((int)good.RequireFirstImage().Extent.DataStart + 8, 4).Clear();
        File.WriteAllBytes(path, bytes);
        using FitsFile file = FitsFile.Open(path);
        FitsHdu image = file.RequireFirstImage();
        var row = new ushort[image.Width];
        image.ReadRows(0, row);
        var error = Assert.Throws<FitsFormatException>(() => image.ReadRows(1, row));
        Assert.Equal(
            "a.fits.fz, HDU 1: tile 2 cannot be unpacked: it has no bytes. Copy the file again from its origin, "
                + "or leave it out.",
            error.Message
        );
        image.ReadRows(2, row);
    }

    [NeedsProgramFact("fpack", "libcfitsio-bin")]
    public void TheHeaderCanBeHandedOnToAPlainImage()
    {
        using var folder = new TemporaryFolder();
        string path = Pack(
            folder,
            "-r",
            new FitsImage<ushort>(30, 20, new ushort[600], [FitsCard.Of("EXPTIME", 60.0)])
        );
        using FitsFile packed = FitsFile.Open(path);
        var pixels = new ushort[600];
        packed.RequireFirstImage().ReadRows(0, pixels);
        FitsWriter.Write(
            folder.File("b.fits"),
            new FitsImage<ushort>(30, 20, pixels, [.. packed.RequireFirstImage().Header])
        );
        using FitsFile plain = FitsFile.Open(folder.File("b.fits"));
        Assert.Equal(60.0, plain.Hdus[0].Header.Number("EXPTIME"));
        Assert.DoesNotContain(plain.Hdus[0].Header, card =>
            card.Keyword.StartsWith('Z') || card.Keyword.StartsWith('T')
        );
    }

    private delegate long[] Bits(FitsHdu hdu);

    private static long[] AsLong(FitsHdu hdu)
    {
        var pixels = new long[hdu.Width * hdu.Height];
        hdu.ReadRows(0, pixels);
        return pixels;
    }

    private static long[] AsDouble(FitsHdu hdu)
    {
        var pixels = new double[hdu.Width * hdu.Height];
        hdu.ReadRows(0, pixels);
        return [.. pixels.Select(value => double.IsNaN(value) ? long.MinValue : BitConverter.DoubleToInt64Bits(value))];
    }

    private static void Compare(string options, FitsImage image, Bits bits)
    {
        using var folder = new TemporaryFolder();
        string packed = Pack(folder, options, image);
        var (exit, output) = ExternalTool.Run("funpack", "-O", folder.File("b.fits"), packed);
        Assert.True(exit == 0, output);
        using FitsFile theirs = FitsFile.Open(folder.File("b.fits")),
            ours = FitsFile.Open(packed);
        Assert.Equal(FitsHduKind.CompressedImage, ours.RequireFirstImage().Kind);
        Assert.True(ours.RequireFirstImage().VerifyChecksum(out _));
        long[] expected = bits(theirs.RequireFirstImage()),
            actual = bits(ours.RequireFirstImage());
        Assert.True(
            expected.AsSpan().SequenceEqual(actual),
            $"fpack {options}: {image.GetType().GenericTypeArguments[0].Name} differ at pixel "
                + $"{expected.AsSpan().CommonPrefixLength(actual)}"
        );
    }

    private static string Pack(TemporaryFolder folder, string options, FitsImage image)
    {
        FitsWriter.Write(folder.File("a.fits"), image, durable: false);
        var (exit, output) = ExternalTool.Run("fpack", [.. options.Split(' '), folder.File("a.fits")]);
        Assert.True(exit == 0, output);
        return folder.File("a.fits.fz");
    }

    private static FitsImage<T> Pixels<T>(Func<int, T> value)
        where T : unmanaged => new(101, 67, Enumerable.Range(0, 101 * 67).Select(value).ToArray());

    /// <summary>Reproducible noise: a multiplicative hash of the pixel number.</summary>
    private static int Noise(int i, int range) => (int)(((uint)i * 2654435761u >> 8) % (uint)range);
}
