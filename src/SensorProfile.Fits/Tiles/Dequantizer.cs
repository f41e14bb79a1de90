namespace SensorProfile.Fits.Tiles;

/// <summary>
/// Restores floats from scaled integers, with or without subtracted dither (FITS 4.0 §10.2 and appendix I).
/// </summary>
internal static class Dequantizer
{
    /// <summary>Number of random values, which are reused cyclically.</summary>
    public const int RandomCount = 10_000;

    private const int ExactZero = -2147483646; // means 0.0 in SUBTRACTIVE_DITHER_2
    private const int OffsetSpan = 500;
    private static readonly float[] Randoms = MakeRandoms();

    /// <summary>value = zero + scale × (integer − r + ½); without dither zero + scale × integer.</summary>
    /// <param name="integers">Integers from the codec.</param>
    /// <param name="values">The restored floats.</param>
    /// <param name="scale">ZSCALE of the tile.</param>
    /// <param name="zero">ZZERO of the tile.</param>
    /// <param name="blank">The integer that means NaN.</param>
    /// <param name="dither">Quantisation method of the floats.</param>
    /// <param name="seed">Table row of the tile, from 0, plus ZDITHER0 − 1.</param>
    public static void Decode(
        ReadOnlySpan<int> integers,
        Span<double> values,
        double scale,
        double zero,
        long? blank,
        Dither dither,
        long seed
    )
    {
        int start = (int)(((seed % RandomCount) + RandomCount) % RandomCount),
            at = (int)(Randoms[start] * OffsetSpan);
        for (int i = 0; i < integers.Length; i++)
        {
            int integer = integers[i];
            values[i] =
                integer == blank ? double.NaN
                : dither == Dither.None ? (integer * scale) + zero
                : dither == Dither.SubtractiveKeepsZero && integer == ExactZero ? 0
                : ((integer - (double)Randoms[at] + 0.5) * scale) + zero;
            if (++at < RandomCount)
                continue;
            start = (start + 1) % RandomCount;
            at = (int)(Randoms[start] * OffsetSpan);
        }
    }

    /// <summary>The generator of appendix I: x ← 16807·x mod 2³¹ − 1 from 1; the value is x/(2³¹ − 1).</summary>
    internal static long NextSeed(long seed) => seed * 16807 % int.MaxValue;

    private static float[] MakeRandoms()
    {
        var randoms = new float[RandomCount];
        long seed = 1;
        for (int i = 0; i < randoms.Length; i++)
        {
            seed = NextSeed(seed);
            randoms[i] = (float)((double)seed / int.MaxValue);
        }

        return randoms;
    }
}
