namespace SensorProfile.Raw.Writing;

/// <summary>A fraction with 32-bit terms.</summary>
/// <param name="Numerator">The numerator.</param>
/// <param name="Denominator">The denominator, positive.</param>
internal readonly record struct Fraction(long Numerator, long Denominator)
{
    /// <summary>
    /// The simplest fraction equal to the number, or the closest with terms of 31 bits.
    /// </summary>
    /// <remarks>A convergent of the continued fraction; each is the best of all fractions with smaller terms.</remarks>
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
