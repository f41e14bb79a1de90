using System.Globalization;

namespace SensorProfile;

/// <summary>
/// Quantities as text: the value rounded where its uncertainty begins, the uncertainty to two significant digits, then
/// the unit.
/// </summary>
/// <remarks>
/// GUM (JCGM 100:2008) 7.2.6: an uncertainty is given to at most two significant digits and the value is rounded to
/// match.
/// Culture-invariant; a true minus sign; powers of ten only where plain digits would be hard to read (below 0.0001,
/// from ten million).
/// </remarks>
public static class QuantityText
{
    /// <summary>Text for a quantity that is null.</summary>
    internal const string NotMeasured = "not measured";

    private const double SmallestPlain = 1e-4;
    private const double LargestPlain = 1e7;

    /// <summary>"1.5234 ± 0.0041 e⁻", "(4.10 ± 0.32)·10⁻⁵ e⁻/px/s", or "not measured".</summary>
    /// <param name="quantity">A quantity, or null.</param>
    internal static string Of(Measurement? quantity) =>
        quantity is null ? NotMeasured : Of(quantity.Value, quantity.StandardUncertainty, quantity.Unit);

    /// <summary>The value with its uncertainty and unit.</summary>
    /// <param name="value">The best estimate.</param>
    /// <param name="standardUncertainty">One standard uncertainty; 0 prints the value alone.</param>
    /// <param name="unit">Unit as profiles write it, for example "e-/px/s"; "1" and "" print nothing.</param>
    internal static string Of(double value, double standardUncertainty, string unit)
    {
        string number = Number(value, standardUncertainty);
        bool several = number.Contains('±', StringComparison.Ordinal) && unit == "%";
        return WithUnit(several && !number.StartsWith('(') ? $"({number})" : number, unit);
    }

    /// <summary>The value with its uncertainty, without a unit: "1.5234 ± 0.0041".</summary>
    /// <param name="value">The best estimate.</param>
    /// <param name="standardUncertainty">One standard uncertainty; 0 prints the value alone.</param>
    public static string Number(double value, double standardUncertainty)
    {
        if (!double.IsFinite(value))
            return NotMeasured;
        if (!double.IsFinite(standardUncertainty) || standardUncertainty <= 0)
            return Number(value, 6);
        double size = Math.Max(Math.Abs(value), standardUncertainty);
        if (size is >= SmallestPlain and < LargestPlain)
            return Pair(value, standardUncertainty);
        int power = Exponent(size);
        return $"({Pair(value / Math.Pow(10, power), standardUncertainty / Math.Pow(10, power))})·{PowerOfTen(power)}";
    }

    /// <summary>
    /// A number without an uncertainty (a threshold, a setting): up to so many significant digits, no trailing zeros.
    /// </summary>
    /// <param name="value">Any number.</param>
    /// <param name="significantDigits">Digits kept, 1…15.</param>
    public static string Number(double value, int significantDigits = 4)
    {
        if (!double.IsFinite(value))
            return NotMeasured;
        double size = Math.Abs(value);
        if (value == 0 || size is >= SmallestPlain and < LargestPlain)
            return Typeset(
                decimal.Parse(
                        value.ToString($"E{significantDigits - 1}", CultureInfo.InvariantCulture),
                        NumberStyles.Float,
                        CultureInfo.InvariantCulture
                    )
                    .ToString("0.############################", CultureInfo.InvariantCulture)
            );
        string[] parts = value.ToString($"E{significantDigits - 1}", CultureInfo.InvariantCulture).Split('E');
        string mantissa = parts[0].Contains('.', StringComparison.Ordinal)
            ? parts[0].TrimEnd('0').TrimEnd('.')
            : parts[0];
        return $"{Typeset(mantissa)}·{PowerOfTen(int.Parse(parts[1], CultureInfo.InvariantCulture))}";
    }

    /// <summary>A count, its thousands separated by narrow no-break spaces from 10 000 on.</summary>
    /// <param name="count">Pixels, frames …</param>
    public static string Count(long count)
    {
        string digits =
            Math.Abs(count) < 10_000
                ? count.ToString(CultureInfo.InvariantCulture)
                : count.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', '\u202F');
        return Typeset(digits);
    }

    /// <summary>A temperature to a tenth of a degree: "−10.0 °C".</summary>
    /// <param name="celsius">°C.</param>
    public static string Temperature(double celsius) => $"{Tenths(celsius)} °C";

    /// <summary>The number of <see cref="Temperature"/>, for lists and ranges that name the unit once.</summary>
    internal static string Tenths(double celsius) =>
        Typeset(NoNegativeZero(celsius.ToString("F1", CultureInfo.InvariantCulture)));

    /// <summary>
    /// A temperature to at most a tenth of a degree, whole ones without decimals: "−10 °C", "25.8 °C".
    /// </summary>
    /// <param name="celsius">°C.</param>
    public static string Degrees(double celsius) => $"{ShortTenths(celsius)} °C";

    /// <summary>The number of <see cref="Degrees"/>.</summary>
    internal static string ShortTenths(double celsius) =>
        Tenths(celsius) is var text && text.EndsWith(".0", StringComparison.Ordinal) ? text[..^2] : text;

    /// <summary>A unit as it is typeset: "e-/px/s" becomes "e⁻/px/s"; "1" becomes "".</summary>
    /// <param name="unit">Unit as profiles write it.</param>
    public static string Unit(string unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return unit == "1"
            ? ""
            : unit.Replace("e-", "e⁻", StringComparison.Ordinal).Replace("^2", "²", StringComparison.Ordinal);
    }

    /// <summary>A power of ten: "10⁻³".</summary>
    /// <param name="power">The exponent.</param>
    internal static string PowerOfTen(int power) =>
        "10"
        + string.Concat(
            power.ToString(CultureInfo.InvariantCulture).Select(digit => digit == '-' ? '⁻' : "⁰¹²³⁴⁵⁶⁷⁸⁹"[digit - '0'])
        );

    private static string WithUnit(string number, string unit)
    {
        string typeset = number == "1" && unit is ("frames" or "stops") ? unit[..^1] : Unit(unit);
        return typeset.Length == 0 || number == NotMeasured ? number : $"{number} {typeset}";
    }

    private static string Pair(double value, double uncertainty)
    {
        int decimals = 1 - Exponent(uncertainty);
        if (Exponent(Round(uncertainty, decimals)) > Exponent(uncertainty))
            decimals--; // 0.0996 becomes 0.10, not 0.100
        return $"{Fixed(value, decimals)} ± {Fixed(uncertainty, decimals)}";
    }

    private static string Fixed(double value, int decimals) =>
        Typeset(
            NoNegativeZero(
                Round(value, decimals).ToString($"F{Math.Clamp(decimals, 0, 15)}", CultureInfo.InvariantCulture)
            )
        );

    /// <summary>Rounds to so many decimal places; negative places round to tens, hundreds …</summary>
    private static double Round(double value, int decimals)
    {
        if (decimals >= 0)
            return decimals > 15 ? value : Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        double step = Math.Pow(10, -decimals);
        return Math.Round(value / step, MidpointRounding.AwayFromZero) * step;
    }

    private static int Exponent(double value) => (int)Math.Floor(Math.Log10(Math.Abs(value)));

    private static string NoNegativeZero(string text) =>
        text.StartsWith('-') && text.All(c => c is '-' or '0' or '.') ? text[1..] : text;

    private static string Typeset(string text) => text.Replace('-', '−');
}
