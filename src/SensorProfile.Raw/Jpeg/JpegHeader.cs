using SensorProfile.Raw.Mosaics;
using static System.FormattableString;

namespace SensorProfile.Raw.Jpeg;

/// <summary>The headers of a lossless JPEG image, before its coded samples.</summary>
/// <param name="Precision">Bits per sample, 2 to 16.</param>
/// <param name="Width">Columns per component.</param>
/// <param name="Height">Lines.</param>
/// <param name="Tables">Huffman table of each component, in component order.</param>
/// <param name="Predictor">Predictor, 1 to 7.</param>
/// <param name="PointTransform">Number of low bits that were dropped.</param>
/// <param name="RestartLines">Lines after which prediction restarts; 0 for never.</param>
internal sealed record JpegHeader(
    int Precision,
    int Width,
    int Height,
    HuffmanTable[] Tables,
    int Predictor,
    int PointTransform,
    int RestartLines
)
{
    /// <summary>Number of components interleaved in a line.</summary>
    public int Components => Tables.Length;

    /// <summary>Samples per line, over all components.</summary>
    public int LineSamples => Width * Components;

    /// <summary>Reads up to the first coded byte.</summary>
    /// <exception cref="RawFormatException">It is not a Huffman-coded lossless JPEG, or it is damaged.</exception>
    public static JpegHeader Read(SegmentBytes bytes) => new JpegHeaderReader(bytes).Read();

    /// <summary>
    /// Refuses early what the decoder would refuse: compression 7 of a DNG is either lossless JPEG or ordinary JPEG,
    /// and only the image itself tells which. Damage is found when decoding.
    /// </summary>
    /// <exception cref="RawFormatException">It is lossy JPEG, or an unknown lossless form.</exception>
    public static void CheckKind(SegmentBytes bytes)
    {
        try
        {
            new JpegHeaderReader(bytes).CheckKind();
        }
        catch (RawFormatException damage) when (damage.Refusal == RawRefusal.Damaged) { }
    }
}

/// <summary>
/// Reads the markers of a lossless JPEG image (ITU-T T.81, annex B) and refuses any other kind.
/// </summary>
internal sealed class JpegHeaderReader(SegmentBytes bytes)
{
    private const int MaxMarkers = 64;
    private const int MaxComponents = 4;

    private readonly HuffmanTable?[] tables = new HuffmanTable?[4];
    private readonly List<byte> components = [];
    private (int Precision, int Height, int Width) frame;
    private int restartInterval;

    public JpegHeader Read()
    {
        if (bytes.Take(2) is not [0xFF, 0xD8])
            throw bytes.Damaged("expected the start of a JPEG image (FFD8).");
        for (int markers = 0; markers < MaxMarkers; markers++)
        {
            byte marker = Marker();
            ReadOnlySpan<byte> content = Content();
            switch (marker)
            {
                case 0xC3:
                    Frame(content);
                    break;
                case 0xC4:
                    HuffmanTables(content);
                    break;
                case 0xDA:
                    return Scan(content);
                case 0xDD:
                    restartInterval =
                        content.Length >= 2
                            ? Word(content)
                            : throw bytes.Damaged("the restart interval (DRI) is cut short.");
                    break;
                case >= 0xC0 and <= 0xCF:
                    throw OtherFrame(marker);
                default:
                    break; // comments and application data
            }
        }
        throw bytes.Damaged(Invariant($"more than {MaxMarkers} JPEG markers precede the samples."));
    }

    /// <summary>Reads up to the frame header.</summary>
    public void CheckKind()
    {
        if (bytes.Take(2) is not [0xFF, 0xD8])
            return;
        for (int markers = 0; markers < MaxMarkers; markers++)
        {
            byte marker = Marker();
            if (marker is 0xC3 or 0xDA)
                return;
            if (marker is >= 0xC0 and <= 0xCF and not 0xC4)
                throw OtherFrame(marker);
            Content();
        }
    }

    private byte Marker()
    {
        if (bytes.Take(1)[0] != 0xFF)
            throw bytes.Damaged("expected a JPEG marker (FF).");
        byte marker = 0xFF;
        for (int fill = 0; marker == 0xFF && fill < 256; fill++)
            marker = bytes.Take(1)[0];
        return marker is >= 0xC0 and < 0xFF and not (>= 0xD0 and <= 0xD9)
            ? marker
            : throw bytes.Damaged(Invariant($"the JPEG marker FF{marker:X2} has no place before the samples."));
    }

    private ReadOnlySpan<byte> Content()
    {
        int length = Word(bytes.Take(2));
        return length >= 2
            ? bytes.Take(length - 2)
            : throw bytes.Damaged("a JPEG marker is shorter than its own length.");
    }

    private RawFormatException OtherFrame(byte marker) =>
        marker is 0xC7 or 0xCB or 0xCF
            ? bytes.Refuse(
                RawRefusal.UnknownCoding,
                Invariant($"this form of lossless JPEG (FF{marker:X2}) is not known to this reader."),
                "Convert it to DNG with another compression."
            )
            : bytes.Refuse(
                RawRefusal.Lossy,
                Invariant(
                    $"the samples are compressed with loss (JPEG, FF{marker:X2}): what is left of their noise is not the sensor's."
                ),
                "Take frames in the camera's raw format, without lossy compression."
            );

    private void Frame(ReadOnlySpan<byte> content)
    {
        if (components.Count > 0 || content.Length < 6 || content.Length != 6 + (3 * content[5]))
            throw bytes.Damaged("the JPEG frame header (SOF3) has a wrong length or appears twice.");
        frame = (content[0], Word(content[1..]), Word(content[3..]));
        if (
            frame.Precision is < 2 or > 16
            || frame.Height == 0
            || frame.Width == 0
            || content[5] is 0 or > MaxComponents
        )
        {
            string size = Invariant(
                $"{frame.Width} × {frame.Height} samples of {frame.Precision} bits in {content[5]} components"
            );
            throw bytes.Damaged($"the JPEG frame header (SOF3) asks for {size}.");
        }
        for (int c = 0; c < content[5]; c++)
        {
            ReadOnlySpan<byte> component = content.Slice(6 + (3 * c), 3);
            // a single component is coded sample after sample, whatever its factors (T.81, A.2.2)
            if (component[1] != 0x11 && content[5] > 1)
                throw bytes.Refuse(
                    RawRefusal.UnknownCoding,
                    "the components of the JPEG image differ in size: the camera reduced the colours.",
                    "Take frames in the camera's full raw format."
                );
            components.Add(component[0]);
        }
    }

    private void HuffmanTables(ReadOnlySpan<byte> content)
    {
        while (content.Length >= 17)
        {
            byte place = content[0];
            ReadOnlySpan<byte> counts = content.Slice(1, 16);
            int number = 0;
            foreach (byte count in counts)
                number += count;
            if (place > 3 || content.Length < 17 + number)
                throw bytes.Damaged("a Huffman table (DHT) has a wrong place or length.");
            ReadOnlySpan<byte> values = content.Slice(17, number);
            if (HuffmanTable.Fault(counts, values) is { } fault)
                throw bytes.Damaged("a Huffman table (DHT) is impossible: " + fault);
            tables[place] = HuffmanTable.Build(counts, values);
            content = content[(17 + number)..];
        }
        if (content.Length > 0)
            throw bytes.Damaged("a Huffman table (DHT) is cut short.");
    }

    private JpegHeader Scan(ReadOnlySpan<byte> content)
    {
        if (
            components.Count == 0
            || content.Length < 1
            || content.Length != 4 + (2 * content[0])
            || content[0] != components.Count
        )
            throw bytes.Damaged("the JPEG scan header (SOS) does not match its frame header (SOF3).");
        var chosen = new HuffmanTable[components.Count];
        for (int c = 0; c < chosen.Length; c++)
        {
            int place = content[2 + (2 * c)] >> 4;
            if (content[1 + (2 * c)] != components[c] || place > 3)
                throw bytes.Damaged("the JPEG scan header (SOS) names other components than its frame header (SOF3).");
            chosen[c] = tables[place]
                ?? throw bytes.Damaged("the JPEG scan header (SOS) names a Huffman table that is missing.");
        }
        int predictor = content[^3];
        int transform = content[^1] & 0xF;
        if (predictor is < 1 or > 7 || transform >= frame.Precision)
            throw bytes.Damaged(
                Invariant($"the JPEG scan header (SOS) asks for predictor {predictor} and a shift by {transform} bits.")
            );
        if (restartInterval % frame.Width != 0)
            throw bytes.Damaged(
                Invariant(
                    $"restarts every {restartInterval} samples do not fall on the ends of lines of {frame.Width}."
                )
            );
        return new JpegHeader(
            frame.Precision,
            frame.Width,
            frame.Height,
            chosen,
            predictor,
            transform,
            restartInterval / frame.Width
        );
    }

    private static int Word(ReadOnlySpan<byte> at) => (at[0] << 8) | at[1];
}
