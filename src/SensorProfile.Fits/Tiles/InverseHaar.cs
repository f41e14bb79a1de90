namespace SensorProfile.Fits.Tiles;

/// <summary>
/// The inverse of HCOMPRESS's two-dimensional integer Haar transform. The forward transform drops the low bits of the
/// sums; they follow from the differences.
/// </summary>
internal static class InverseHaar
{
    /// <summary>Converts coefficients to pixels, in place.</summary>
    /// <param name="a">Coefficients, <paramref name="columns"/> per row.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="columns">Columns.</param>
    public static void Apply(Span<long> a, int rows, int columns)
    {
        int levels = HcompressCodec.Levels(Math.Max(rows, columns));
        if (levels == 0)
            return;
        var bits = new LevelBits(levels - 1);
        long quarter = 1L << (levels + 1);
        a[0] = (a[0] + (a[0] >= 0 ? quarter >> 1 : (quarter >> 1) - 1)) & -quarter;
        var spare = new long[(Math.Max(rows, columns) + 1) / 2];
        (int height, int width, int restRows, int restColumns) = (1, 1, rows, columns);
        for (int level = levels - 1, size = 1 << levels; level >= 0; level--)
        {
            size >>= 1;
            height = Quadtree.Grow(height, ref restRows, size);
            width = Quadtree.Grow(width, ref restColumns, size);
            for (int i = 0; i < height; i++)
                Interleave(a[(columns * i)..], width, 1, spare);
            for (int j = 0; j < width; j++)
                Interleave(a[j..], height, columns, spare);
            Combine(a, height, width, columns, bits, level == 0 ? 2 : 1);
            bits = new LevelBits(level - 1);
        }
    }

    /// <summary>The lowest significant bits at a level and how to round to them.</summary>
    private readonly struct LevelBits(int level)
    {
        private readonly long half0 = level > 0 ? 1L << (level - 1) : 0;

        public long Bit0 { get; } = level >= 0 ? 1L << level : 0;

        public long Bit1 => 2 * Bit0;

        /// <summary>Rounds a mixed difference to a multiple of bit 0.</summary>
        public long Round0(long value) => (value + (value >= 0 || half0 == 0 ? half0 : half0 - 1)) & -Bit0;

        /// <summary>Rounds a difference to a multiple of bit 1.</summary>
        public long Round1(long value) => (value + (value >= 0 ? Bit0 : Bit0 - 1)) & -Bit1;
    }

    private static void Combine(Span<long> a, int rows, int columns, int stride, LevelBits bits, int shift)
    {
        int evenRows = rows & ~1,
            evenColumns = columns & ~1;
        for (int i = 0; i < evenRows; i += 2)
        {
            int at = stride * i;
            for (int j = 0; j < evenColumns; j += 2, at += 2)
                Block(a, at, at + stride, bits, shift);
            if (evenColumns < columns)
                Pair(a, at, at + stride, bits, shift);
        }

        if (evenRows == rows)
            return;
        int last = stride * evenRows;
        for (int j = 0; j < evenColumns; j += 2, last += 2)
            Pair(a, last, last + 1, bits, shift);
        if (evenColumns < columns)
            a[last] >>= shift;
    }

    private static void Block(Span<long> a, int upper, int lower, LevelBits bits, int shift)
    {
        long h0 = a[upper],
            hx = bits.Round1(a[lower]),
            hy = bits.Round1(a[upper + 1]),
            hc = bits.Round0(a[lower + 1]);
        long low0 = hc & bits.Bit0;
        hx += hx >= 0 ? -low0 : low0;
        hy += hy >= 0 ? -low0 : low0;
        long low1 = (hc ^ hx ^ hy) & bits.Bit1;
        h0 +=
            h0 >= 0 ? low0 - low1
            : low0 == 0 ? low1
            : low0 - low1;
        a[lower + 1] = (h0 + hx + hy + hc) >> shift;
        a[lower] = (h0 + hx - hy - hc) >> shift;
        a[upper + 1] = (h0 - hx + hy - hc) >> shift;
        a[upper] = (h0 - hx - hy + hc) >> shift;
    }

    private static void Pair(Span<long> a, int first, int second, LevelBits bits, int shift)
    {
        long difference = bits.Round1(a[second]),
            low = difference & bits.Bit1,
            sum = a[first];
        sum += sum >= 0 ? -low : low;
        a[second] = (sum + difference) >> shift;
        a[first] = (sum - difference) >> shift;
    }

    /// <summary>Interleaves the sums (first half) and differences (second half) of a line.</summary>
    private static void Interleave(Span<long> line, int length, int step, long[] spare)
    {
        int sums = (length + 1) / 2;
        for (int i = sums; i < length; i++)
            spare[i - sums] = line[i * step];
        for (int i = sums - 1; i >= 0; i--)
            line[2 * i * step] = line[i * step];
        for (int i = sums; i < length; i++)
            line[((2 * (i - sums)) + 1) * step] = spare[i - sums];
    }
}
