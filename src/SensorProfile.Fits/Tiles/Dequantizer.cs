namespace SensorProfile.Fits.Tiles;

/// <summary>
/// Rebuilds floats from scaled integers, with or without the dither that was subtracted (FITS 4.0 §10.2 and appendix
/// I).
/// </summary>
internal static class Dequantizer
{
    /// <summary>Number of random values, which are used over and over.</summary>
    public const int RandomCount = 10_000;

    private const int ExactZero = -2147483646; // stands for 0.0 in SUBTRACTIVE_DITHER_2
    private const int OffsetSpan = 500;
    private static readonly float[] Randoms = MakeRandoms();

    /// <summary>value = zero + scale × (integer − r + ½), or without dither zero + scale × integer.</summary>
    /// <param name="integers">What the codec gave.</param>
    /// <param name="values">The floats.</param>
    /// <param name="scale">ZSCALE of the tile.</param>
    /// <param name="zero">ZZERO of the tile.</param>
    /// <param name="blank">The integer that stands for NaN.</param>
    /// <param name="dither">How floats were quantised.</param>
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
