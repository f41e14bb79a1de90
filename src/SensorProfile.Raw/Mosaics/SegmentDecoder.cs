namespace SensorProfile.Raw.Mosaics;

/// <summary>Gives the rows of one strip or tile, one after the other.</summary>
internal abstract class SegmentDecoder(SegmentBytes bytes) : IDisposable
{
    /// <summary>The bytes of the segment.</summary>
    protected SegmentBytes Bytes { get; } = bytes;

    /// <summary>Columns.</summary>
    public int Width { get; } = bytes.Segment.Width;

    /// <summary>The row that comes next, from 0.</summary>
    public int NextRow { get; private set; }

    /// <summary>
    /// Makes a row the next one. What is compressed is decoded up to it from the last place that is known.
    /// </summary>
    /// <param name="row">Row of the segment.</param>
    /// <param name="scratch">Room for one row.</param>
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
    /// <param name="row">Room for <see cref="Width"/> samples.</param>
    /// <exception cref="RawFormatException">The samples are damaged.</exception>
    public void ReadRow(Span<ushort> row)
    {
        Decode(row);
        NextRow++;
    }

    /// <summary>Gives back what can be had again.</summary>
    public virtual void Park() => Bytes.Park();

    /// <inheritdoc/>
    public virtual void Dispose() { }

    /// <summary>Goes to a place at or before a row.</summary>
    /// <returns>The row at which it stands.</returns>
    protected virtual int GoTo(int row)
    {
        if (row >= NextRow)
            return NextRow;
        Restart();
        return 0;
    }

    /// <summary>Keeps in mind where it stands, for those that can go back there.</summary>
    protected virtual void Remember() { }

    /// <summary>Goes back to the first row.</summary>
    protected abstract void Restart();

    /// <summary>Decodes one row.</summary>
    protected abstract void Decode(Span<ushort> row);
}
