using System.IO.Compression;
using System.Text;
using SensorProfile.Fits;
using SensorProfile.Fits.Bytes;
using SensorProfile.Frames.Headers;

namespace SensorProfile.Fuzz.Targets;

/// <summary>FITS files: as they are, tile-compressed, packed by gzip; headers are read as those of frames, too.</summary>
internal static class FitsTargets
{
    private const int MostRows = 50;
    private const long WidestRow = 1 << 20;

    private static readonly byte[][] words =
    [
        .. new[]
        {
            "END     ",
            "NAXIS   ",
            "NAXIS1  ",
            "BITPIX  ",
            "BZERO   ",
            "XTENSION",
            "'BINTABLE'",
            "'IMAGE   '",
            "PCOUNT  ",
            "TFORM1  ",
            "'1PB(0)'",
            "'1QB'",
            "ZNAXIS1 ",
            "ZTILE1  ",
            "ZCMPTYPE",
            "'RICE_1  '",
            "'PLIO_1  '",
            "'HCOMPRESS_1'",
            "'GZIP_2  '",
            "ZBITPIX ",
            "ZQUANTIZ",
            "CONTINUE",
            "HIERARCH",
            "= ",
            "'",
            "/",
            "&'",
            "EXPTIME ",
            "CCD-TEMP",
            "DATE-OBS",
            "BAYERPAT",
            "IMAGETYP",
            "XBINNING",
            "GAIN    ",
        }.Select(Encoding.ASCII.GetBytes),
    ];

    public static Target Plain() => new("FITS", [.. PlainSeeds()], words, InputForm.Cards, Read);

    public static Target Tiles() =>
        new("tile-compressed FITS", [.. Packed("*.fits.gz").Select(Unpack)], words, InputForm.Cards, Read);

    public static Target Gzip() =>
        new("gzip", [.. Packed("*.gz"), .. PlainSeeds().Select(Pack)], words, InputForm.Binary, Read);

    private static IEnumerable<byte[]> Packed(string pattern) =>
        Directory
            .EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "Seeds"), pattern)
            .Order(StringComparer.Ordinal)
            .Select(File.ReadAllBytes);

    private static IEnumerable<byte[]> PlainSeeds()
    {
        FitsCard[] cards =
        [
            FitsCard.Of("EXPTIME", 30.0, "[s]"),
            FitsCard.Of("CCD-TEMP", -10.05),
            FitsCard.Of("SET-TEMP", -10.0),
            FitsCard.Of("GAIN", 100L),
            FitsCard.Of("OFFSET", 30L),
            FitsCard.Of("IMAGETYP", "Dark Frame"),
            FitsCard.Of("DATE-OBS", "2031-10-14T20:15:00.123"),
            FitsCard.Of("BAYERPAT", "RGGB"),
            FitsCard.Of("XBINNING", 1L),
            FitsCard.Of("READOUTM", "Mode 1"),
            FitsCard.Of("INSTRUME", "Tarn-9M"),
        ];
        const int width = 12,
            height = 9;
        int[] codes = [.. Enumerable.Range(0, width * height).Select(i => (i * 7919) % 4096)];
        yield return Bytes(new FitsImage<ushort>(width, height, codes.Select(c => (ushort)c).ToArray(), cards));
        yield return Bytes(new FitsImage<short>(width, height, codes.Select(c => (short)-c).ToArray(), cards));
        yield return Bytes(new FitsImage<byte>(width, height, codes.Select(c => (byte)c).ToArray(), cards));
        yield return Bytes(new FitsImage<int>(width, height, codes, cards));
        yield return Bytes(new FitsImage<float>(width, height, codes.Select(c => c / 7f).ToArray(), cards));
        yield return Bytes(new FitsImage<double>(width, height, codes.Select(c => c / 7.0).ToArray(), cards));
    }

    private static byte[] Bytes(FitsImage image)
    {
        string file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            FitsWriter.Write(file, image, durable: false);
            return File.ReadAllBytes(file);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static byte[] Unpack(byte[] packed)
    {
        using var gzip = new GZipStream(new MemoryStream(packed), CompressionMode.Decompress);
        using var plain = new MemoryStream();
        gzip.CopyTo(plain);
        return plain.ToArray();
    }

    private static byte[] Pack(byte[] plain)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true))
            gzip.Write(plain);
        return packed.ToArray();
    }

    private static bool Read(byte[] bytes)
    {
        try
        {
            using FitsFile file = FitsFile.Open(ByteSource.Unpacked(new MemorySource(bytes)));
            foreach (FitsHdu hdu in file.Hdus)
                Read(hdu);
            return true;
        }
        catch (FitsFormatException refusal)
        {
            if (!refusal.Message.StartsWith(MemorySource.Name, StringComparison.Ordinal))
                throw new InvalidOperationException("The refusal does not name the file.", refusal);
            return false;
        }
    }

    private static void Read(FitsHdu hdu)
    {
        HeaderReading.Read(
            new KeywordValues(
                hdu.Header.Where(card => card.Kind != FitsValueKind.Commentary)
                    .Select(card => KeyValuePair.Create(card.Keyword, card.Value))
            ),
            hdu.Height
        );
        hdu.VerifyChecksum(out _);
        if (!hdu.HasPixels || hdu.Width > WidestRow)
            return;
        var row = new double[hdu.Width];
        for (int y = 0; y < Math.Min(hdu.Height, MostRows); y++)
            hdu.ReadRows(y, row, hdu.Planes - 1);
    }
}
