using SensorProfile.Raw.Containers;
using static System.FormattableString;

namespace SensorProfile.Raw.Mosaics;

/// <summary>
/// Layout of a directory's samples in the file, checked against the file's length before any is read.
/// </summary>
internal sealed class SegmentLayout
{
    private readonly TiffDirectory directory;
    private readonly long[] offsets;
    private readonly long[] byteCounts;

    private SegmentLayout(TiffDirectory directory, SampleCoding coding)
    {
        this.directory = directory;
        Coding = coding;
        Width = directory.Required(Tag.ImageWidth, 1, MosaicLimits.MaxPixelsOfASide);
        Height = directory.Required(Tag.ImageLength, 1, MosaicLimits.MaxPixelsOfASide);
        if ((long)Width * Height > MosaicLimits.MaxSamples)
            throw directory.Refuse(
                Tag.ImageLength,
                RawRefusal.TooLarge,
                Invariant(
                    $"{Width} × {Height} samples are more than the {MosaicLimits.MaxSamples} that this reader takes."
                ),
                "Check the file with the program that made it."
            );
        IsTiled = directory.Has(Tag.TileOffsets);
        (SegmentWidth, SegmentHeight) = IsTiled ? TileSize() : (Width, StripHeight());
        (Across, Down) = ((Width + SegmentWidth - 1) / SegmentWidth, (Height + SegmentHeight - 1) / SegmentHeight);
        (offsets, byteCounts) = Places((long)Across * Down);
        if (StandsInWords())
            Coding = coding with { StoredBits = 16 };
    }

    /// <summary>Columns of the mosaic.</summary>
    public int Width { get; }

    /// <summary>Rows of the mosaic.</summary>
    public int Height { get; }

    /// <summary>Coding of the samples.</summary>
    public SampleCoding Coding { get; }

    /// <summary>Whether there are tiles instead of strips.</summary>
    public bool IsTiled { get; }

    /// <summary>Columns per strip or tile.</summary>
    public int SegmentWidth { get; }

    /// <summary>Rows per strip or tile.</summary>
    public int SegmentHeight { get; }

    /// <summary>Number of tiles side by side; 1 for strips.</summary>
    public int Across { get; }

    /// <summary>Number of strips or tiles from top to bottom.</summary>
    public int Down { get; }

    /// <summary>Reads the layout of a directory.</summary>
    /// <exception cref="RawFormatException">It is contradictory, too large, or extends beyond the end of the
    /// file.</exception>
    public static SegmentLayout Read(TiffDirectory directory, SampleCoding coding)
    {
        var layout = new SegmentLayout(directory, coding);
        for (int i = 0; i < layout.offsets.Length; i++)
            layout.CheckEnd(i);
        return layout;
    }

    /// <summary>One strip or tile.</summary>
    public Segment At(int across, int down)
    {
        int index = (down * Across) + across;
        int height = Math.Min(SegmentHeight, Height - (down * SegmentHeight));
        return new Segment(index, IsTiled, offsets[index], byteCounts[index], SegmentWidth, height);
    }

    /// <summary>
    /// Whether samples of 9 to 15 bits are stored as 16-bit numbers; no tag tells, only the length of the first strip
    /// or tile.
    /// </summary>
    private bool StandsInWords() =>
        Coding is { Compression: RawCompression.None, Bits: > 8 and < 16 }
        && byteCounts[0] == 2L * SegmentWidth * SegmentHeight
        && Coding.RowBytes(SegmentWidth) < 2L * SegmentWidth; // a few narrow rows take as much either way: then packed, as in TIFF

    private Tag OffsetsTag => IsTiled ? Tag.TileOffsets : Tag.StripOffsets;

    private Tag CountsTag => IsTiled ? Tag.TileByteCounts : Tag.StripByteCounts;

    private (int Width, int Height) TileSize() =>
        (
            directory.Required(Tag.TileWidth, MosaicLimits.MinTileSide, MosaicLimits.MaxPixelsOfASide + 1),
            directory.Required(Tag.TileLength, MosaicLimits.MinTileSide, MosaicLimits.MaxPixelsOfASide + 1)
        );

    private int StripHeight()
    {
        long rows = directory.Integer(Tag.RowsPerStrip) ?? Height; // 2³² − 1 by default: one strip
        return rows >= 1
            ? (int)Math.Min(rows, Height)
            : throw directory.Damaged(Tag.RowsPerStrip, Invariant($"expected at least 1 row, found {rows}."));
    }

    private (long[] Offsets, long[] Counts) Places(long needed)
    {
        if (needed > MosaicLimits.MaxSegments)
            throw directory.Refuse(
                OffsetsTag,
                RawRefusal.TooLarge,
                Invariant(
                    $"{needed} strips or tiles are more than the {MosaicLimits.MaxSegments} that this reader takes."
                ),
                "Check the file with the program that made it."
            );
        long[] starts = Exactly(OffsetsTag, needed);
        bool lengthIsKnown = needed == 1 && Coding.Compression == RawCompression.None && !directory.Has(CountsTag);
        return (starts, lengthIsKnown ? [Coding.RowBytes(SegmentWidth) * SegmentHeight] : Exactly(CountsTag, needed));
    }

    private long[] Exactly(Tag tag, long needed)
    {
        long found = directory.Entry(tag)?.Count ?? 0;
        return found == needed
            ? directory.Integers(tag, needed)
            : throw directory.Damaged(
                tag,
                Invariant(
                    $"{Width} × {Height} samples in pieces of {SegmentWidth} × {SegmentHeight} need {needed} values, found {found}."
                )
            );
    }

    private void CheckEnd(int index)
    {
        (long offset, long bytes, long end) = (offsets[index], byteCounts[index], directory.Source.Length);
        Segment segment = At(index % Across, index / Across);
        if (offset < 0 || offset + bytes > end) // signed types can be negative
            throw directory.Damaged(
                OffsetsTag,
                Invariant(
                    $"{segment.Name} stands at bytes {offset} to {offset + bytes - 1}, but the file ends after {end} bytes."
                )
            );
        long least = Coding.MinBytes(SegmentWidth, segment.Height);
        if (bytes < least)
            throw directory.Damaged(
                CountsTag,
                Invariant(
                    $"{segment.Name} of {SegmentWidth} × {segment.Height} samples needs at least {least} bytes, found {bytes}."
                )
            );
    }
}
