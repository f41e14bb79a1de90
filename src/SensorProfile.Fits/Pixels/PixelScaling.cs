using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fits.Pixels;

/// <summary>
/// How stored numbers become physical values: physical = BZERO + BSCALE × stored; BLANK is a stored number (FITS 4.0
/// §4.4.2.5).
/// </summary>
/// <param name="Bitpix">BITPIX of the stored numbers.</param>
/// <param name="Scale">BSCALE.</param>
/// <param name="Zero">BZERO.</param>
/// <param name="Blank">BLANK; null when there is none, and for floats, which use NaN.</param>
internal sealed record PixelScaling(int Bitpix, double Scale, double Zero, long? Blank)
{
    /// <summary>Bytes per stored number.</summary>
    public int ElementBytes => Math.Abs(Bitpix) / 8;

    /// <summary>The type of the physical values.</summary>
    public FitsPixelType PixelType =>
        (Bitpix, Scale, Zero) switch
        {
            (8, 1, 0) => FitsPixelType.UInt8,
            (8, 1, -128) => FitsPixelType.Int8,
            (16, 1, 0) => FitsPixelType.Int16,
            (16, 1, 32768) => FitsPixelType.UInt16,
            (32, 1, 0) => FitsPixelType.Int32,
            (32, 1, 2147483648) => FitsPixelType.UInt32,
            (64, 1, 0) => FitsPixelType.Int64,
            (64, 1, 9223372036854775808) => FitsPixelType.UInt64,
            (-32, 1, 0) => FitsPixelType.Float32,
            _ => FitsPixelType.Float64,
        };

    /// <summary>
    /// Whether BZERO only shifts the origin by half the range: flipping the top bit of the stored number is then the
    /// whole scaling.
    /// </summary>
    public bool FlipsTopBit =>
        PixelType is FitsPixelType.Int8 or FitsPixelType.UInt16 or FitsPixelType.UInt32 or FitsPixelType.UInt64;

    /// <summary>Whether BSCALE and BZERO have to be applied in floating point.</summary>
    public bool NeedsArithmetic => PixelType == FitsPixelType.Float64 && (Bitpix, Scale, Zero) is not (-64, 1, 0);

    /// <summary>Reads BSCALE, BZERO and BLANK and reports oddities.</summary>
    /// <exception cref="FitsFormatException">BSCALE or BZERO is present but not a number in the form of the standard,
    /// so that the values cannot be known.</exception>
    public static PixelScaling Read(FileScan scan, FitsHeader header, int bitpix)
    {
        double scale = Strict(scan, header, "BSCALE", 1),
            zero = Strict(scan, header, "BZERO", 0);
        if (scale == 0)
            scan.Warn(
                FitsWarningCodes.ZeroScale,
                "BSCALE",
                header.Card("BSCALE")?.ByteOffset,
                "BSCALE is 0, so every pixel has the value of BZERO."
            );
        return new PixelScaling(bitpix, scale, zero, ReadBlank(scan, header, bitpix));
    }

    private static double Strict(FileScan scan, FitsHeader header, string keyword, double usual)
    {
        FitsCard? card = header.Card(keyword);
        if (card is null || card.Kind == FitsValueKind.Undefined)
            return usual;
        bool number = card.Kind is FitsValueKind.Integer or FitsValueKind.Real && !card.HasDecimalComma;
        return number && card.Number is { } value
            ? value
            : throw scan.Fault(keyword, card.ByteOffset, $"expected a number, found '{card.Value}'.");
    }

    private static long? ReadBlank(FileScan scan, FitsHeader header, int bitpix)
    {
        FitsCard? card = header.Card("BLANK");
        if (card is null || card.Kind == FitsValueKind.Undefined)
            return null;
        if (bitpix > 0 && card.Integer is { } blank)
            return blank;
        string why = bitpix < 0 ? "has no meaning in a floating-point image" : $"'{card.Value}' is not an integer";
        scan.Warn(FitsWarningCodes.MeaninglessBlank, "BLANK", card.ByteOffset, $"BLANK {why}; it is ignored.");
        return null;
    }
}
