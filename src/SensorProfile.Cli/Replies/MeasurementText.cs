using System.Globalization;

namespace SensorProfile.Cli.Replies;

/// <summary>Numbers as people read them: the uncertainty with two significant digits, the value to the same place (GUM 7.2.6).</summary>
internal static class MeasurementText
{
    public static string Of(Measurement quantity) =>
        WithUnit($"{Number(quantity.Value, Decimals(quantity))} ± {Number(quantity.StandardUncertainty, Decimals(quantity))}", quantity.Unit);

    /// <summary>The value alone, to the place that its uncertainty allows.</summary>
    public static string ValueOnly(Measurement quantity) => Number(quantity.Value, Decimals(quantity));

    /// <summary>A plain number, at most <paramref name="digits"/> significant digits, no exponent for everyday sizes.</summary>
    public static string Plain(double value, int digits = 4)
    {
        if (!double.IsFinite(value)) return double.IsNaN(value) ? "?" : value > 0 ? "∞" : "−∞";
        if (value == 0) return "0";
        int decimals = digits - 1 - Magnitude(value);
        return decimals is >= 0 and <= 9 ? Trimmed(Number(value, decimals)) : decimals < 0 ? Number(value, 0) : Minus(value.ToString("0.###e+0", CultureInfo.InvariantCulture));
    }

    public static string WithUnit(string number, string unit) => unit is "" or "1" ? number : $"{number} {unit}";

    private static int Decimals(Measurement quantity)
    {
        double scale = quantity.StandardUncertainty > 0 ? quantity.StandardUncertainty : Math.Abs(quantity.Value) / 100;
        return scale > 0 && double.IsFinite(scale) ? 1 - Magnitude(scale) : 0;
    }

    private static int Magnitude(double value) => (int)Math.Floor(Math.Log10(Math.Abs(value)));

    private static string Number(double value, int decimals)
    {
        if (!double.IsFinite(value)) return Plain(value);
        if (decimals > 9) return Minus(value.ToString("0.0e+0", CultureInfo.InvariantCulture));
        if (decimals >= 0) return Minus(value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
        double step = Math.Pow(10, -decimals);
        return Minus((Math.Round(value / step) * step).ToString("F0", CultureInfo.InvariantCulture));
    }

    private static string Trimmed(string number) => number.Contains('.') ? number.TrimEnd('0').TrimEnd('.') : number;

    private static string Minus(string text) => text.Replace('-', '−');
}
