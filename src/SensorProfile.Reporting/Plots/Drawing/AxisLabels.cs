namespace SensorProfile.Reporting.Plots.Drawing;

/// <summary>Numbers beside the axes.</summary>
internal static class AxisLabels
{
    /// <summary>Plain digits with a true minus sign.</summary>
    public static string Plain(double value) => QuantityText.Number(Math.Abs(value) < 1e-12 ? 0 : value, 6);

    /// <summary>Plain digits from 0.001 to 9999, else powers of ten.</summary>
    public static string Power(double value)
    {
        if (value is >= 0.00099 and < 10_000)
            return QuantityText.Number(value, 3);
        double power = Math.Log10(value);
        return Math.Abs(power - Math.Round(power)) < 1e-6
            ? QuantityText.PowerOfTen((int)Math.Round(power))
            : QuantityText.Number(value, 2);
    }
}
