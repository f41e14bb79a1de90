using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fits.Tiles;

/// <summary>What the header states about the content of the tiles.</summary>
internal sealed class TileParameters
{
    private const int MaxPixelsPerBlock = 1 << 16;

    /// <summary>
    /// Reads and checks ZCMPTYPE, ZBITPIX, ZNAMEn and ZVALn, ZQUANTIZ, ZDITHER0, ZSCALE, ZZERO and ZBLANK.
    /// </summary>
    /// <exception cref="FitsFormatException">The codec is unknown, or a parameter it needs is missing.</exception>
    public TileParameters(FileScan scan, FitsHeader header, TileTable table)
    {
        string name = header.Text("ZCMPTYPE") ?? "";
        Compression = name switch
        {
            "RICE_1" or "RICE_ONE" => TileCompression.Rice,
            "GZIP_1" => TileCompression.Gzip,
            "GZIP_2" => TileCompression.ShuffledGzip,
            "PLIO_1" => TileCompression.Plio,
            "HCOMPRESS_1" => TileCompression.Hcompress,
            "NOCOMPRESS" => TileCompression.None,
            _ => throw scan.Fault(
                "ZCMPTYPE",
                header.Card("ZCMPTYPE")?.ByteOffset,
                $"the image is tile-compressed with '{name}', which the standard does not know.",
                "Unpack it with the program that wrote it."
            ),
        };
        Bitpix = (int)Checked(scan, header, "ZBITPIX", header.Integer("ZBITPIX"), value =>
            value is 8 or 16 or 32 or 64 or -32 or -64
        );
        if (Bitpix == 64 && Compression is TileCompression.Rice or TileCompression.Plio or TileCompression.Hcompress)
            throw scan.Fault(
                "ZBITPIX",
                header.Card("ZBITPIX")?.ByteOffset,
                $"{name} does not compress 64-bit integers."
            );
        RiceBlockSize = (int)Checked(scan, header, "BLOCKSIZE", Parameter(header, "BLOCKSIZE") ?? 32, value =>
            value is > 0 and <= MaxPixelsPerBlock
        );
        RiceBytesPerPixel = (int)Checked(scan, header, "BYTEPIX", Parameter(header, "BYTEPIX") ?? 4, value =>
            value is 1 or 2 or 4 || Compression != TileCompression.Rice
        );
        if (Compression == TileCompression.Hcompress && Parameter(header, "SMOOTH") is > 0)
            throw scan.Fault(
                "SMOOTH",
                null,
                "the tiles ask for smoothing after HCOMPRESS_1, which this reader does not do.",
                "Unpack the file with the program that packed it, and give the unpacked file."
            );
        (Scale, Zero, Blank) = (
            TileValue.Read(table, header, "ZSCALE"),
            TileValue.Read(table, header, "ZZERO"),
            TileValue.Read(table, header, "ZBLANK")
        );
        ReadQuantisation(scan, header);
    }

    /// <summary>The codec.</summary>
    public TileCompression Compression { get; }

    /// <summary>ZBITPIX.</summary>
    public int Bitpix { get; }

    /// <summary>Bytes per stored number.</summary>
    public int ElementBytes => Math.Abs(Bitpix) / 8;

    /// <summary>BLOCKSIZE of RICE_1.</summary>
    public int RiceBlockSize { get; }

    /// <summary>BYTEPIX of RICE_1.</summary>
    public int RiceBytesPerPixel { get; }

    /// <summary>Whether the tiles hold scaled integers instead of floats.</summary>
    public bool Quantised { get; private set; }

    /// <summary>ZQUANTIZ.</summary>
    public Dither Dither { get; private set; }

    /// <summary>ZDITHER0.</summary>
    public long DitherSeed { get; private set; } = 1;

    /// <summary>ZSCALE.</summary>
    public TileValue Scale { get; }

    /// <summary>ZZERO.</summary>
    public TileValue Zero { get; }

    /// <summary>ZBLANK.</summary>
    public TileValue Blank { get; }

    private void ReadQuantisation(FileScan scan, FitsHeader header)
    {
        if (Bitpix > 0)
            return;
        string method = header.Text("ZQUANTIZ") ?? "NO_DITHER";
        bool lossless = method == "NONE" || (!Scale.Exists && !header.Contains("ZQUANTIZ"));
        if (lossless && Compression is TileCompression.Gzip or TileCompression.ShuffledGzip or TileCompression.None)
            return;
        Quantised = true;
        foreach (var (keyword, value) in new[] { ("ZSCALE", Scale), ("ZZERO", Zero) })
        {
            if (!value.Exists)
                throw scan.Fault(
                    keyword,
                    null,
                    "the floats were compressed as scaled integers, and there is neither a column nor a keyword "
                        + $"{keyword} to get them back.",
                    "Compress the image again from the original, or leave the file out."
                );
        }

        Dither = method switch
        {
            "NO_DITHER" or "NONE" => Dither.None,
            "SUBTRACTIVE_DITHER_1" => Dither.Subtractive,
            "SUBTRACTIVE_DITHER_2" => Dither.SubtractiveKeepsZero,
            _ => throw scan.Fault(
                "ZQUANTIZ",
                header.Card("ZQUANTIZ")?.ByteOffset,
                $"the quantisation method '{method}' is not known."
            ),
        };
        DitherSeed = header.Integer("ZDITHER0") ?? 1;
        if (DitherSeed is < 0 or > int.MaxValue)
            throw scan.Fault(
                "ZDITHER0",
                header.Card("ZDITHER0")?.ByteOffset,
                $"expected 1 to 10000, found '{header.Card("ZDITHER0")?.Value}'."
            );
    }

    /// <summary>The value of a named parameter of the codec (ZNAMEi, ZVALi).</summary>
    private static long? Parameter(FitsHeader header, string name)
    {
        for (int i = 1; header.Text($"ZNAME{i}") is { } given; i++)
        {
            if (given == name)
                return header.Number($"ZVAL{i}") is { } value and > int.MinValue and < int.MaxValue
                    ? (long)value
                    : null;
        }

        return null;
    }

    private static long Checked(FileScan scan, FitsHeader header, string keyword, long? value, Func<long, bool> good) =>
        value is { } number && good(number)
            ? number
            : throw scan.Fault(
                keyword,
                header.Card(keyword)?.ByteOffset,
                "expected a value that tiles can have, found "
                    + $"'{header.Card(keyword)?.Value ?? value?.ToString(System.Globalization.CultureInfo.InvariantCulture)}'."
            );
}
