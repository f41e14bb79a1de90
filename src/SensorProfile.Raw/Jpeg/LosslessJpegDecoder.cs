using SensorProfile.Raw.Mosaics;
using static System.FormattableString;

namespace SensorProfile.Raw.Jpeg;

/// <summary>Decodes Huffman-coded lossless JPEG (ITU-T T.81, process 14), line by line.</summary>
/// <remarks>
/// A line of the JPEG image holds one or more rows of the strip or tile: DNG writers code a row of W samples as two
/// components of W/2, and some code two rows as two components of W. Prediction follows the JPEG image, whatever the
/// rows. The positions where the last few reads began and ended are kept, since threads that share the rows of a frame
/// request them slightly out of order.
/// </remarks>
internal sealed class LosslessJpegDecoder : SegmentDecoder
{
    private const int MaxRowsOfALine = 4;
    private const int MaxBookmarks = 8;

    private readonly bool sixteenBitsAreCoded;
    private readonly List<Bookmark> bookmarks = []; // oldest first
    private JpegHeader? header;
    private long codedFrom;
    private JpegBitState bits;
    private ushort[] line = [];
    private ushort[] above = [];
    private int nextLine;
    private int rowsLeftOfLine;

    public LosslessJpegDecoder(SegmentBytes bytes, SampleCoding coding)
        : base(bytes) => sixteenBitsAreCoded = coding.SixteenBitsAreCoded;

    protected override void Restart()
    {
        (bits, nextLine, rowsLeftOfLine) = (default, 0, 0);
        Bytes.MoveTo(codedFrom);
    }

    protected override void Remember()
    {
        if (NextRow == 0 || bookmarks.Exists(known => known.Row == NextRow))
            return;
        ushort[] kept = bookmarks.Count < MaxBookmarks ? new ushort[line.Length] : bookmarks[0].Line;
        if (bookmarks.Count == MaxBookmarks)
            bookmarks.RemoveAt(0);
        line.CopyTo(kept, 0);
        bookmarks.Add(new Bookmark(NextRow, Bytes.Position, bits, nextLine, rowsLeftOfLine, kept));
    }

    protected override int GoTo(int row)
    {
        Bookmark? nearest = bookmarks.Where(known => known.Row <= row).MaxBy(known => known.Row);
        if (row >= NextRow && (nearest is null || nearest.Row <= NextRow))
            return NextRow;
        if (nearest is null)
        {
            Restart();
            return 0;
        }
        Bytes.MoveTo(nearest.Position);
        (bits, nextLine, rowsLeftOfLine) = (nearest.Bits, nearest.NextLine, nearest.RowsLeftOfLine);
        nearest.Line.CopyTo(line, 0);
        return nearest.Row;
    }

    protected override void Decode(Span<ushort> row)
    {
        header ??= ReadHeader();
        if (rowsLeftOfLine == 0)
            DecodeLine(header);
        ReadOnlySpan<ushort> samples = line.AsSpan(header.LineSamples - (rowsLeftOfLine * Width), Width);
        rowsLeftOfLine--;
        if (header.PointTransform == 0)
            samples.CopyTo(row);
        else
            for (int i = 0; i < row.Length; i++)
                row[i] = (ushort)(samples[i] << header.PointTransform);
    }

    private JpegHeader ReadHeader()
    {
        Bytes.MoveTo(0);
        JpegHeader read = JpegHeader.Read(Bytes);
        int rowsOfALine = read.LineSamples / Width;
        bool fits =
            read.LineSamples % Width == 0
            && rowsOfALine is >= 1 and <= MaxRowsOfALine
            && (long)rowsOfALine * read.Height >= Bytes.Segment.Height;
        if (!fits)
        {
            string found = Invariant($"{read.Height} lines of {read.Components} × {read.Width} samples");
            string needed = Invariant($"{Bytes.Segment.Height} rows of {Width}");
            throw Bytes.Damaged($"the JPEG image has {found}, which do not make {needed}.");
        }
        (line, above) = (new ushort[read.LineSamples], new ushort[read.LineSamples]);
        codedFrom = Bytes.Position;
        return read;
    }

    private void DecodeLine(JpegHeader jpeg)
    {
        (line, above) = (above, line);
        int lineOfInterval = jpeg.RestartLines > 0 ? nextLine % jpeg.RestartLines : nextLine;
        if (lineOfInterval == 0 && nextLine > 0)
            PassRestart((nextLine / jpeg.RestartLines) - 1);
        var reader = new JpegBits(Bytes, bits);
        bool codesAreKnown = lineOfInterval == 0 ? FirstLine(jpeg, ref reader) : OtherLine(jpeg, ref reader);
        bits = reader.Leave();
        if (!codesAreKnown)
            throw Damaged("a code is not in its table");
        if (reader.Overran)
            throw Damaged("they end too early");
        if (
            line.AsSpan()
                .ContainsAnyExceptInRange((ushort)0, (ushort)((1 << (jpeg.Precision - jpeg.PointTransform)) - 1))
        )
            throw Damaged(Invariant($"a sample does not fit {jpeg.Precision} bits"));
        nextLine++;
        rowsLeftOfLine = jpeg.LineSamples / Width;
    }

    private RawFormatException Damaged(string what) =>
        Bytes.Damaged(Invariant($"the compressed samples are damaged in line {nextLine} of the JPEG image: {what}."));

    /// <summary>Restart markers count cyclically from 0 to 7; prediction and bit buffer restart after them.</summary>
    private void PassRestart(int number)
    {
        const int mostFill = 256;
        bits = default;
        Bytes.Fill(2);
        // any number of FF bytes may precede a marker (T.81, B.1.1.2)
        for (int fill = 0; fill < mostFill && Bytes.Window is [0xFF, 0xFF, ..]; fill++)
        {
            Bytes.Advance(1);
            if (Bytes.Window.Length < 2)
                Bytes.Fill(2);
        }
        if (Bytes.Window is not [0xFF, var marker, ..] || marker != 0xD0 + (number & 7))
            throw Damaged(Invariant($"the restart marker FF{0xD0 + (number & 7):X2} is missing"));
        Bytes.Advance(2);
    }

    private bool FirstLine(JpegHeader jpeg, ref JpegBits reader)
    {
        int middle = 1 << (jpeg.Precision - jpeg.PointTransform - 1);
        for (int c = 0; c < jpeg.Components; c++)
        {
            if (!reader.TryDifference(jpeg.Tables[c], sixteenBitsAreCoded, out int difference))
                return false;
            line[c] = (ushort)(middle + difference);
        }
        return Rest<LeftPredictor>(jpeg, ref reader);
    }

    private bool OtherLine(JpegHeader jpeg, ref JpegBits reader)
    {
        for (int c = 0; c < jpeg.Components; c++)
        {
            if (!reader.TryDifference(jpeg.Tables[c], sixteenBitsAreCoded, out int difference))
                return false;
            line[c] = (ushort)(above[c] + difference);
        }
        return jpeg.Predictor switch
        {
            1 => Rest<LeftPredictor>(jpeg, ref reader),
            2 => Rest<AbovePredictor>(jpeg, ref reader),
            3 => Rest<AboveLeftPredictor>(jpeg, ref reader),
            4 => Rest<PlanePredictor>(jpeg, ref reader),
            5 => Rest<LeftSlopePredictor>(jpeg, ref reader),
            6 => Rest<AboveSlopePredictor>(jpeg, ref reader),
            _ => Rest<MeanPredictor>(jpeg, ref reader),
        };
    }

    private bool Rest<TPredictor>(JpegHeader jpeg, ref JpegBits reader)
        where TPredictor : struct, IPredictor
    {
        if (jpeg.Components == 1)
            return RestOfOneComponent<TPredictor>(jpeg.Tables[0], ref reader);
        if (jpeg.Components == 2)
            return RestOfTwoComponents<TPredictor>(jpeg.Tables[0], jpeg.Tables[1], ref reader);
        int components = jpeg.Components;
        Span<ushort> current = line;
        ReadOnlySpan<ushort> before = above;
        for (int i = components; i < current.Length; i += components)
        for (int c = 0; c < components; c++)
        {
            if (!reader.TryDifference(jpeg.Tables[c], sixteenBitsAreCoded, out int difference))
                return false;
            int at = i + c;
            int predicted = TPredictor.Predict(current[at - components], before[at], before[at - components]);
            current[at] = (ushort)(predicted + difference);
        }
        return true;
    }

    private bool RestOfOneComponent<TPredictor>(HuffmanTable table, ref JpegBits reader)
        where TPredictor : struct, IPredictor
    {
        Span<ushort> current = line;
        ReadOnlySpan<ushort> before = above.AsSpan(0, current.Length);
        ushort left = current[0];
        for (int i = 1; i < current.Length; i++)
        {
            if (!reader.TryDifference(table, sixteenBitsAreCoded, out int difference))
                return false;
            left = (ushort)(TPredictor.Predict(left, before[i], before[i - 1]) + difference);
            current[i] = left;
        }
        return true;
    }

    private bool RestOfTwoComponents<TPredictor>(HuffmanTable first, HuffmanTable second, ref JpegBits reader)
        where TPredictor : struct, IPredictor
    {
        Span<ushort> current = line;
        ReadOnlySpan<ushort> before = above.AsSpan(0, current.Length);
        (ushort left, ushort leftOfSecond) = (current[0], current[1]);
        for (int i = 3; i < current.Length; i += 2)
        {
            if (!reader.TryDifference(first, sixteenBitsAreCoded, out int a))
                return false;
            if (!reader.TryDifference(second, sixteenBitsAreCoded, out int b))
                return false;
            leftOfSecond = (ushort)(TPredictor.Predict(leftOfSecond, before[i], before[i - 2]) + b);
            left = (ushort)(TPredictor.Predict(left, before[i - 1], before[i - 3]) + a);
            (current[i - 1], current[i]) = (left, leftOfSecond);
        }
        return true;
    }

    /// <summary>The state from which decoding can continue at a row.</summary>
    private sealed record Bookmark(
        int Row,
        long Position,
        JpegBitState Bits,
        int NextLine,
        int RowsLeftOfLine,
        ushort[] Line
    );
}
