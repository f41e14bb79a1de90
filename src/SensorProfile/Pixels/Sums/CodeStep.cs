namespace SensorProfile.Pixels.Sums;

/// <summary>
/// Spacing of the codes that a camera uses: 1, or more when the output of a converter with fewer bits is stretched to
/// 16.
/// </summary>
/// <param name="Step">Largest s such that all codes are ≡ c (mod s), ADU; 1 when fewer than two different codes
/// occur.</param>
/// <param name="Offset">c, 0 … s − 1.</param>
/// <param name="CodesUsed">Number of different codes that occur. By chance, m codes share an even step with probability
/// 2^(1−m), so 8 or more leave no doubt.</param>
/// <param name="Exceptions">Pixels at code 0 or 65535 that do not fit the step: cameras clip to the ends of the range
/// whatever their step.</param>
internal sealed record CodeStep(int Step, int Offset, int CodesUsed, long Exceptions)
{
    /// <summary>
    /// Finds the step of one channel, or of any number of frames and channels together
    /// (<see cref="IntegerHistogram.Merge"/>).
    /// </summary>
    public static CodeStep Find(IntegerHistogram codes)
    {
        var used = new List<int>();
        for (int code = codes.Lowest; code <= codes.Highest; code++)
            if (codes[code] > 0 && code is not (0 or ushort.MaxValue))
                used.Add(code);
        int step = 0;
        for (int i = 1; i < used.Count; i++)
            step = (int)System.Numerics.BigInteger.GreatestCommonDivisor(step, used[i] - used[i - 1]);
        if (step == 0)
            return new CodeStep(1, 0, used.Count, 0);
        int offset = used[0] % step;
        return new CodeStep(
            step,
            offset,
            used.Count,
            Misfit(codes, 0, step, offset) + Misfit(codes, ushort.MaxValue, step, offset)
        );
    }

    private static long Misfit(IntegerHistogram codes, int code, int step, int offset) =>
        code % step == offset ? 0 : codes[code];
}
