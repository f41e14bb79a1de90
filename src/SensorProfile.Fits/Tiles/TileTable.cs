using System.Buffers.Binary;
using System.Globalization;
using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fits.Tiles;

/// <summary>
/// The binary table whose rows are tiles: fixed cells, and descriptors that point into the heap (FITS 4.0 §7.3).
/// </summary>
internal sealed class TileTable
{
    private readonly HduExtent extent;
    private readonly List<TileColumn> columns = [];
    private readonly int rowBytes;
    private readonly long heapStart;
    private readonly long heapBytes;

    /// <summary>Reads the columns.</summary>
    /// <exception cref="FitsFormatException">The table is invalid.</exception>
    public TileTable(FileScan scan, HduExtent extent, FitsHeader header, HduLayout layout)
    {
        this.extent = extent;
        if (layout.Axes.Length != 2 || layout.Axes[0] > int.MaxValue || layout.Axes[1] > int.MaxValue)
            throw scan.Fault(
                "NAXIS",
                header.Card("NAXIS")?.ByteOffset,
                "expected a table of rows and columns that holds the tiles."
            );
        (rowBytes, Rows) = ((int)layout.Axes[0], (int)layout.Axes[1]);
        long tableBytes = (long)rowBytes * Rows,
            heapOffset = header.Integer("THEAP") ?? tableBytes;
        if (heapOffset < tableBytes || heapOffset > extent.DataBytes)
            throw scan.Fault(
                "THEAP",
                header.Card("THEAP")?.ByteOffset,
                $"expected the heap between byte {tableBytes} and {extent.DataBytes} of the data, found "
                    + $"'{header.Card("THEAP")?.Value}'."
            );
        heapStart = extent.DataStart + heapOffset;
        heapBytes = extent.DataBytes - heapOffset;
        ReadColumns(scan, header);
        CheckDescriptors(scan);
    }

    /// <summary>Number of rows, which is the number of tiles.</summary>
    public int Rows { get; }

    /// <summary>The column with a name; null when there is none.</summary>
    public TileColumn? Column(string name) =>
        columns.Find(column => column.Name.Equals(name, StringComparison.OrdinalIgnoreCase));

    /// <summary>Reads one row.</summary>
    public byte[] ReadRow(int row)
    {
        var cells = new byte[rowBytes];
        ReadFully(extent.DataStart + ((long)row * rowBytes), cells);
        return cells;
    }

    /// <summary>The bytes in the heap that a cell points to; empty when it points to none.</summary>
    public byte[] ReadHeap(ReadOnlySpan<byte> row, TileColumn column)
    {
        (long count, long offset) = Descriptor(row, column);
        if (count == 0)
            return []; // whatever the offset is
        if (!IsInside(count, offset, column.ElementBytes))
            throw new InvalidDataException("its descriptor has changed since the file was opened");
        var bytes = new byte[count * column.ElementBytes];
        ReadFully(heapStart + offset, bytes);
        return bytes;
    }

    /// <summary>The number in a cell.</summary>
    public static double Number(ReadOnlySpan<byte> row, TileColumn column) =>
        column.Letter switch
        {
            'B' => row[column.Offset],
            'I' => BinaryPrimitives.ReadInt16BigEndian(row[column.Offset..]),
            'J' => BinaryPrimitives.ReadInt32BigEndian(row[column.Offset..]),
            'K' => BinaryPrimitives.ReadInt64BigEndian(row[column.Offset..]),
            'E' => BinaryPrimitives.ReadSingleBigEndian(row[column.Offset..]),
            'D' => BinaryPrimitives.ReadDoubleBigEndian(row[column.Offset..]),
            _ => double.NaN,
        };

    private void ReadColumns(FileScan scan, FitsHeader header)
    {
        long fields = header.Integer("TFIELDS") ?? -1,
            offset = 0;
        if (fields is < 0 or > 999)
            throw scan.Fault(
                "TFIELDS",
                header.Card("TFIELDS")?.ByteOffset,
                "expected the number of columns, 0 to 999."
            );
        for (int i = 1; i <= fields; i++)
        {
            string keyword = $"TFORM{i}",
                form = header.Text(keyword) ?? "";
            int digits = form.AsSpan().IndexOfAnyExceptInRange('0', '9');
            char letter = digits < 0 ? ' ' : form[digits];
            long repeat =
                digits > 0
                && long.TryParse(
                    form.AsSpan(0, digits),
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out long given
                )
                    ? given
                    : 1;
            int size = letter == 'X' ? 1 : TileColumn.BytesOf(letter);
            int heapElement =
                letter is 'P' or 'Q' && digits + 1 < form.Length ? TileColumn.BytesOf(form[digits + 1]) : size;
            if (size == 0 || heapElement == 0 || repeat > rowBytes)
                throw scan.Fault(
                    keyword,
                    header.Card(keyword)?.ByteOffset,
                    $"expected the type of a column, found '{form}'."
                );
            if (repeat > 0)
                columns.Add(new TileColumn(header.Text($"TTYPE{i}") ?? "", (int)offset, letter, heapElement));
            offset += letter == 'X' ? (repeat + 7) / 8 : repeat * size;
            if (offset > rowBytes)
                throw scan.Fault(
                    keyword,
                    header.Card(keyword)?.ByteOffset,
                    $"the columns up to this one need {offset} bytes, a row has {rowBytes}."
                );
        }
    }

    /// <summary>
    /// Checks that every descriptor points into the heap, so that a bad one is found on opening and not in mid-work.
    /// </summary>
    private void CheckDescriptors(FileScan scan)
    {
        const int stepBytes = 1 << 18;
        TileColumn[] descriptors = [.. columns.Where(column => column.IsDescriptor)];
        int step = Math.Max(1, stepBytes / Math.Max(1, rowBytes));
        if (rowBytes > 1 << 20)
            throw scan.Fault("NAXIS1", null, $"a table row of {rowBytes} bytes does not describe a tile.");
        var rows = new byte[Math.Min(step, Rows) * rowBytes];
        for (int first = 0; first < Rows; first += step)
        {
            int count = Math.Min(step, Rows - first);
            ReadFully(extent.DataStart + ((long)first * rowBytes), rows.AsSpan(0, count * rowBytes));
            for (int i = 0; i < count; i++)
            {
                foreach (TileColumn column in descriptors)
                    CheckDescriptor(scan, rows.AsSpan(i * rowBytes, rowBytes), column, first + i);
            }
        }
    }

    private void CheckDescriptor(FileScan scan, ReadOnlySpan<byte> row, TileColumn column, int index)
    {
        (long count, long offset) = Descriptor(row, column);
        if (count == 0 || IsInside(count, offset, column.ElementBytes))
            return;
        throw scan.Fault(
            column.Name,
            extent.DataStart + ((long)index * rowBytes) + column.Offset,
            string.Create(
                CultureInfo.InvariantCulture,
                $"tile {index + 1} claims {count} elements from byte {offset} of a heap of {heapBytes} bytes."
            ),
            "Copy the file again from its origin, or leave it out."
        );
    }

    private bool IsInside(long count, long offset, int elementBytes) =>
        count >= 0
        && offset >= 0
        && offset <= heapBytes
        && count <= (heapBytes - offset) / elementBytes
        && count <= Array.MaxLength / elementBytes;

    private static (long Count, long Offset) Descriptor(ReadOnlySpan<byte> row, TileColumn column) =>
        column.Letter == 'P'
            ? (
                BinaryPrimitives.ReadInt32BigEndian(row[column.Offset..]),
                BinaryPrimitives.ReadInt32BigEndian(row[(column.Offset + 4)..])
            )
            : (
                BinaryPrimitives.ReadInt64BigEndian(row[column.Offset..]),
                BinaryPrimitives.ReadInt64BigEndian(row[(column.Offset + 8)..])
            );

    private void ReadFully(long offset, Span<byte> bytes)
    {
        if (extent.Source.Read(offset, bytes) == bytes.Length)
            return;
        throw extent.Source.Damage
            ?? new FitsFormatException(
                extent.Location with
                {
                    ByteOffset = offset,
                },
                $"the file has become shorter since it was opened: {bytes.Length} bytes are missing here.",
                "Copy the file again from its origin, or leave it out."
            );
    }
}
