namespace SensorProfile.FixedPattern.Input;

/// <summary>Numbers a person would choose: 1, 2 or 5 times a power of ten.</summary>
internal static class RoundNumbers
{
    /// <summary>The smallest such number not below a positive value.</summary>
    public static double AtLeast(double value)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(value)));
        foreach (double factor in (ReadOnlySpan<double>)[1, 2, 5])
            if (factor * power >= value * (1 - 1e-9))
                return Clean(factor, power);
        return Clean(10, power);
    }

    /// <summary>
    /// All such numbers from the first not below <paramref name="from"/> to the last not above <paramref name="to"/>,
    /// ascending.
    /// </summary>
    public static IEnumerable<double> Between(double from, double to)
    {
        for (double value = AtLeast(from); value <= to * (1 + 1e-9); value = AtLeast(value * 1.5))
            yield return value;
    }

    // Makes 5·10⁻² the double closest to 0.05, however it was computed.
    private static double Clean(double factor, double power) =>
        power < 1 ? factor / Math.Round(1 / power) : factor * Math.Round(power);
}
