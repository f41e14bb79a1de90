using System.Globalization;

namespace SensorProfile.NoiseModel;

/// <summary>
/// Numbers as this room's sentences write them: few digits, a true minus sign, the same in every culture.
/// </summary>
internal static class Plain
{
    /// <summary>Up to three significant digits, powers of ten only far from everyday sizes.</summary>
    internal static string Number(double value, int digits = 3)
    {
        if (!double.IsFinite(value))
            return Signed(value.ToString(CultureInfo.InvariantCulture));
        if (value == 0)
            return "0";
        int exponent = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (exponent is < -5 or > 8)
            return QuantityText.Number(value, digits);
        int decimals = Math.Clamp(digits - 1 - exponent, 0, 10);
        string text = Math.Round(value, decimals).ToString("F" + Whole(decimals), CultureInfo.InvariantCulture);
        return Signed(decimals > 0 ? text.TrimEnd('0').TrimEnd('.') : text);
    }

    internal static string Whole(long value) => Signed(value.ToString(CultureInfo.InvariantCulture));

    /// <summary>"−12 °C", "4.3 °C", "0.19 °C": two decimals below 1, none for large values.</summary>
    internal static string Celsius(double value)
    {
        double rounded = Math.Round(
            value,
            Math.Abs(value) < 1 ? 2
                : Math.Abs(value) < 20 ? 1
                : 0,
            MidpointRounding.AwayFromZero
        );
        return Signed((rounded + 0.0).ToString("0.##", CultureInfo.InvariantCulture)) + " °C";
    }

    /// <summary>A limit, rounded down to the same decimals: never overstated.</summary>
    internal static string CelsiusAtMost(double limit) =>
        Celsius(
            limit < 1 ? Math.Floor(limit * 100) / 100
            : limit < 20 ? Math.Floor(limit * 10) / 10
            : Math.Floor(limit)
        );

    /// <summary>A share of 1 as per cent: 0.05 → "5 %".</summary>
    internal static string Percent(double share)
    {
        double percent = 100 * share;
        return (
                Math.Abs(percent) is > 0 and < 0.01 ? "less than 0.01" : Number(percent, Math.Abs(percent) < 10 ? 2 : 3)
            ) + " %";
    }

    /// <summary>"0.5 e⁻/px/s".</summary>
    internal static string Rate(double electronsPerPixelSecond, int digits = 3) =>
        Number(electronsPerPixelSecond, digits) + " e⁻/px/s";

    internal static string Seconds(double value) => Number(value) + " s";

    /// <summary>"45 s", "12 min", "3 h 20 min".</summary>
    internal static string Duration(double seconds)
    {
        if (seconds < 90)
            return Whole((long)Math.Round(seconds)) + " s";
        long minutes = (long)Math.Round(seconds / 60);
        if (minutes < 90)
            return Whole(minutes) + " min";
        return minutes % 60 == 0 ? $"{Whole(minutes / 60)} h" : $"{Whole(minutes / 60)} h {Whole(minutes % 60)} min";
    }

    /// <summary>Decimal bytes, as disks are sold: "180 MB", "1.2 GB".</summary>
    internal static string Bytes(double bytes) =>
        bytes < 1e9 ? Number(bytes / 1e6, 2) + " MB" : Number(bytes / 1e9, 2) + " GB";

    internal static string Signed(string text) => text.Replace('-', '−');
}
