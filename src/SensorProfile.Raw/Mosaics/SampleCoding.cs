using SensorProfile.Raw.Containers;
using static System.FormattableString;

namespace SensorProfile.Raw.Mosaics;

/// <summary>How single samples are coded: bits, byte order, compression, differences.</summary>
/// <param name="Compression">The compression.</param>
/// <param name="Bits">Bits per sample, 8 to 16.</param>
/// <param name="IsBigEndian">Byte order of 16-bit samples; samples of other widths are packed highest bit
/// first.</param>
/// <param name="Distance">0 when samples are stored directly; otherwise each is stored as the difference from the one
/// this many columns before.</param>
/// <param name="SixteenBitsAreCoded">Whether differences of −32768 are followed by 16 bits in lossless JPEG, as in the
/// first DNG version.</param>
internal sealed record SampleCoding(
    RawCompression Compression,
    int Bits,
    bool IsBigEndian,
    int Distance,
    bool SixteenBitsAreCoded
)
{
    private const int NoCompression = 1;
    private const int Lzw = 5;
    private const int OldJpeg = 6;
    private const int Jpeg = 7;
    private const int AdobeDeflate = 8;
    private const int PackBits = 32773;
    private const int OldDeflate = 32946;
    private const int LossyJpeg = 34892;
    private const int JpegXl = 52546;
    private const string Convert = "Convert it to DNG with lossless compression or none.";

    /// <summary>Bits of a sample in the file: some cameras store 9 to 15 bits as 16-bit numbers.</summary>
    public int StoredBits { get; init; } = Bits;

    /// <summary>Bytes per row; rows begin at whole bytes.</summary>
    public long RowBytes(int width) => (((long)width * StoredBits) + 7) / 8;

    /// <summary>
    /// The fewest bytes that this many samples can take: a file that claims less is refused before anything is
    /// unpacked.
    /// </summary>
    public long MinBytes(int width, int height) =>
        Compression switch
        {
            RawCompression.None => RowBytes(width) * height,
            RawCompression.LosslessJpeg => (long)width * height / 8, // a Huffman code has at least one bit
            RawCompression.Deflate => RowBytes(width) * height / MosaicLimits.MaxDeflateGrowth,
            _ => RowBytes(width) * height / MosaicLimits.MaxLzwGrowth,
        };

    /// <summary>Reads the coding of a directory.</summary>
    /// <param name="directory">The directory of the mosaic.</param>
    /// <param name="version">Version of DNG; null for other files.</param>
    /// <exception cref="RawFormatException">The coding is not supported, or is lossy.</exception>
    public static SampleCoding Read(TiffDirectory directory, Version? version)
    {
        RawCompression compression = CompressionOf(directory);
        CheckSamples(directory);
        int bits = BitsOf(directory);
        int distance = compression is RawCompression.Deflate or RawCompression.Lzw ? DistanceOf(directory) : 0;
        if (distance > 0 && bits is not (8 or 16))
            throw directory.Refuse(
                Tag.Predictor,
                RawRefusal.UnknownCoding,
                Invariant($"differences of {bits}-bit samples are a coding that this reader does not know."),
                Convert
            );
        bool sixteenBits = version is not null && version < new Version(1, 1);
        return new SampleCoding(compression, bits, directory.IsBigEndian, distance, sixteenBits);
    }

    private static RawCompression CompressionOf(TiffDirectory directory)
    {
        long code = directory.Integer(Tag.Compression) ?? NoCompression;
        return code switch
        {
            NoCompression => RawCompression.None,
            Lzw => RawCompression.Lzw,
            Jpeg => RawCompression.LosslessJpeg, // its frame header tells whether it is lossless
            AdobeDeflate or OldDeflate => RawCompression.Deflate,
            LossyJpeg => throw directory.Refuse(
                Tag.Compression,
                RawRefusal.Lossy,
                "the samples are compressed with loss (lossy DNG): what is left of their noise is not the sensor's.",
                "Convert the original raw file again without lossy compression."
            ),
            JpegXl => throw Unknown(directory, "JPEG XL"),
            OldJpeg => throw Unknown(directory, "JPEG in its old form, as some makers' raw files have it"),
            PackBits => throw Unknown(directory, "PackBits"),
            _ => throw Unknown(directory, Invariant($"compression {code}, a maker's own")),
        };
    }

    private static RawFormatException Unknown(TiffDirectory directory, string name) =>
        directory.Refuse(
            Tag.Compression,
            RawRefusal.UnknownCoding,
            $"the samples are compressed in a way that this reader does not know ({name}).",
            Convert
        );

    private static int BitsOf(TiffDirectory directory)
    {
        long bits = directory.Integer(Tag.BitsPerSample) ?? 1;
        return bits is >= 8 and <= 16
            ? (int)bits
            : throw directory.Refuse(
                Tag.BitsPerSample,
                RawRefusal.UnknownCoding,
                Invariant($"expected 8 to 16 bits per sample, found {bits}."),
                Convert
            );
    }

    private static void CheckSamples(TiffDirectory directory)
    {
        const int unsigned = 1;
        const int unsaid = 4;
        if (directory.Integer(Tag.SampleFormat) is { } format and not (unsigned or unsaid))
            throw directory.Refuse(
                Tag.SampleFormat,
                RawRefusal.UnknownCoding,
                "expected unsigned whole numbers, found "
                    + $"{(format == 2 ? "signed ones" : format == 3 ? "floating-point numbers" : "numbers of another kind")}: "
                    + "the samples were computed.",
                "Leave it out, or give the frame as the camera wrote it."
            );
        if (directory.Integer(Tag.FillOrder) is { } order and not 1)
            throw directory.Refuse(
                Tag.FillOrder,
                RawRefusal.UnknownCoding,
                Invariant($"expected the highest bit of a byte first (1), found {order}."),
                Convert
            );
    }

    private static int DistanceOf(TiffDirectory directory) =>
        directory.Integer(Tag.Predictor) switch
        {
            null or 1 => 0,
            2 => 1,
            34892 => 2, // DNG 1.4: the sample two columns before, which has the same colour
            34893 => 4,
            { } other => throw directory.Refuse(
                Tag.Predictor,
                RawRefusal.UnknownCoding,
                Invariant($"expected whole-number differences, found predictor {other}."),
                Convert
            ),
        };
}
