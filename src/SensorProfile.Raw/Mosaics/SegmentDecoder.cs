namespace SensorProfile.Raw.Mosaics;

/// <summary>Decodes the rows of one strip or tile, one after the other.</summary>
internal abstract class SegmentDecoder(SegmentBytes bytes) : IDisposable
{
    /// <summary>The bytes of the segment.</summary>
    protected SegmentBytes Bytes { get; } = bytes;

    /// <summary>Number of columns.</summary>
    public int Width { get; } = bytes.Segment.Width;

    /// <summary>Index of the next row, from 0.</summary>
    public int NextRow { get; private set; }

    /// <summary>
    /// Makes a given row the next one. Compressed data is decoded up to it from the nearest known position.
    /// </summary>
    /// <param name="row">Row of the segment.</param>
    /// <param name="scratch">Buffer for one row.</param>
    /// <exception cref="RawFormatException">The samples before it are damaged.</exception>
    public void MoveTo(int row, Span<ushort> scratch)
    {
        if (row != NextRow)
        {
            Remember();
            NextRow = GoTo(row);
        }
        while (NextRow < row)
            ReadRow(scratch);
        Remember();
    }

    /// <summary>Decodes the next row.</summary>
    /// <param name="row">Buffer for <see cref="Width"/> samples.</param>
    /// <exception cref="RawFormatException">The samples are damaged.</exception>
    public void ReadRow(Span<ushort> row)
    {
        Decode(row);
        NextRow++;
    }

    /// <summary>Releases whatever can be restored.</summary>
    public virtual void Park() => Bytes.Park();

    /// <inheritdoc/>
    public virtual void Dispose() { }

    /// <summary>Moves to a known position at or before a row.</summary>
    /// <returns>The row at that position.</returns>
    protected virtual int GoTo(int row)
    {
        if (row >= NextRow)
            return NextRow;
        Restart();
        return 0;
    }

    /// <summary>Remembers the current position, in decoders that can return to it.</summary>
    protected virtual void Remember() { }

    /// <summary>Returns to the first row.</summary>
    protected abstract void Restart();

    /// <summary>Decodes one row.</summary>
    protected abstract void Decode(Span<ushort> row);
}
