namespace SensorProfile.Raw.Writing;

/// <summary>A fraction of 32-bit numbers.</summary>
/// <param name="Numerator">Above the line.</param>
/// <param name="Denominator">Below the line, positive.</param>
internal readonly record struct Fraction(long Numerator, long Denominator)
{
    /// <summary>
    /// The simplest fraction that divides out to the number, or the closest with 31 bits on either side.
    /// </summary>
    /// <remarks>Convergents of its continued fraction; each is the best of all fractions with smaller terms.</remarks>
    /// <param name="value">A finite number within ±2³¹.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite or too large.</exception>
    public static Fraction Of(double value)
    {
        double size = Math.Abs(value);
        if (!(size < int.MaxValue))
            throw new ArgumentOutOfRangeException(
                nameof(value),
                value,
                "The number does not fit a fraction of 32-bit numbers."
            );
        (long n, long d, long earlierN, long earlierD) = (1, 0, 0, 1);
        for (double rest = size; ; rest = 1 / (rest - Math.Floor(rest)))
        {
            if (!(rest < int.MaxValue))
                break;
            long whole = (long)Math.Floor(rest);
            (long nextN, long nextD) = ((whole * n) + earlierN, (whole * d) + earlierD);
            if (nextN > int.MaxValue || nextD > int.MaxValue)
                break;
            (earlierN, earlierD, n, d) = (n, d, nextN, nextD);
            if ((double)n / d == size)
                break;
        }
        return new Fraction(value < 0 ? -n : n, d);
    }
}
