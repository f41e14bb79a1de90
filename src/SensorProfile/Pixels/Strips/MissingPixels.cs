namespace SensorProfile.Pixels.Strips;

/// <summary>Reads whole rows of a frame as they are stored, 0 where there is no value.</summary>
internal delegate void RowReader(int firstRow, Span<ushort> samples);

/// <summary>
/// The pixels of a frame that have no value (blank, or not a number), and what is used in their place.
/// </summary>
/// <remarks>Each is replaced by a pixel of the same colour, drawn within 64 columns of the same row, so that levels,
/// noise and shares keep their expectation; the nearest pixel would leave a correlation between neighbours that passes
/// for noise reduction in the camera. The draw depends on the position alone, so two frames use the same pixel and its
/// fixed pattern cancels between them. Replacing a share f makes uncertainties over pixels too small by about
/// f.</remarks>
internal sealed class MissingPixels(int width, int height)
{
    private const int Reach = 64;
    private const int Draws = 8;
    private const int WordBits = 64;

    private readonly ulong[] _words = new ulong[((long)width * height + WordBits - 1) / WordBits];

    /// <summary>Number of pixels without a value.</summary>
    public long Count => _words.Sum(word => (long)System.Numerics.BitOperations.PopCount(word));

    /// <summary>Whether the pixel at this index (row × width + column) has no value.</summary>
    public bool this[long pixel] => (_words[pixel / WordBits] >> (int)(pixel % WordBits) & 1) != 0;

    /// <summary>Marks a pixel as missing.</summary>
    public void Add(int column, int row)
    {
        long pixel = (long)row * width + column;
        _words[pixel / WordBits] |= 1UL << (int)(pixel % WordBits);
    }

    /// <summary>Adds the missing pixels of another frame of the same size.</summary>
    public void Add(MissingPixels other)
    {
        for (int i = 0; i < _words.Length; i++)
            _words[i] |= other._words[i];
    }

    /// <summary>Fills the missing pixels with the values of other pixels.</summary>
    /// <param name="samples">Whole rows.</param>
    /// <param name="firstRow">Row of the frame that comes first in the samples.</param>
    /// <param name="read">Reads another row, for rows without any values.</param>
    public void Fill(Span<ushort> samples, int firstRow, RowReader read)
    {
        for (int start = 0; start < samples.Length; start += width)
            FillRow(samples.Slice(start, width), firstRow + start / width, read);
    }

    private void FillRow(Span<ushort> row, int y, RowReader read)
    {
        int from = NearestWithValues(y);
        ReadOnlySpan<ushort> source = row;
        for (int x = 0; x < width; x++)
        {
            if (!this[(long)y * width + x])
                continue;
            if (from != y && source == row)
            {
                var other = new ushort[width];
                read(from, other);
                source = other;
            }
            row[x] = source[Drawn(x, from)];
        }
    }

    // Every second row has the same colours.
    private int NearestWithValues(int y)
    {
        for (int distance = 0; distance < height; distance += 2)
        {
            if (y >= distance && HasValues(y - distance))
                return y - distance;
            if (y + distance < height && HasValues(y + distance))
                return y + distance;
        }
        return y; // only in a frame of almost nothing but gaps, which was refused before
    }

    private bool HasValues(int y)
    {
        bool even = false,
            odd = width < 2;
        for (int x = 0; x < width && !(even && odd); x++)
            if (!this[(long)y * width + x])
                (even, odd) = (even || x % 2 == 0, odd || x % 2 == 1);
        return even && odd;
    }

    // Every second column has the same colour.
    private int Drawn(int x, int row)
    {
        ulong state = (ulong)row * (ulong)width + (ulong)x;
        for (int draw = 0; draw < Draws; draw++)
        {
            state = Mixed(state);
            int column = x + 2 * ((int)(state % (Reach + 1)) - Reach / 2);
            if (column >= 0 && column < width && !this[(long)row * width + column])
                return column;
        }
        for (int distance = 0; distance < width; distance += 2)
        {
            if (x >= distance && !this[(long)row * width + x - distance])
                return x - distance;
            if (x + distance < width && !this[(long)row * width + x + distance])
                return x + distance;
        }
        return x;
    }

    // SplitMix64 (Steele, Lea and Flood 2014, OOPSLA): neighbouring places draw independently.
    private static ulong Mixed(ulong state)
    {
        state += 0x9E3779B97F4A7C15;
        state = (state ^ state >> 30) * 0xBF58476D1CE4E5B9;
        state = (state ^ state >> 27) * 0x94D049BB133111EB;
        return state ^ state >> 31;
    }
}
