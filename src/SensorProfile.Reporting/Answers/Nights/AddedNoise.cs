using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Nights;

/// <summary>
/// Noise that dark current adds, rounded up in the third digit everywhere: an "at most" is never below the true value,
/// sentence, number and table agree, and a value beyond the accepted loss never reads as within it.
/// </summary>
internal static class AddedNoise
{
    private const double Least = 0.01;

    /// <summary>"4.8 %", "less than 0.01 %".</summary>
    internal static string Of(double percent) =>
        percent is > 0 and < Least ? $"less than {Plain.Number(Least)} %" : Plain.Number(Up(percent)) + " %";

    /// <summary>"at most 4.8 %", "less than 0.01 %".</summary>
    internal static string AtMost(double percent) => percent < Least ? Of(percent) : $"at most {Of(percent)}";

    /// <summary>Ends of an interval, rounded outwards: "1.91 % … 1.93 %".</summary>
    internal static string Between(double low, double high) => $"{Plain.Number(Down(low))} % … {Of(high)}";

    /// <summary>Whether a quantity of an answer is such an added noise.</summary>
    /// <param name="quantity">Its name for scripts.</param>
    internal static bool Is(string quantity) => quantity is QuantityNames.ExtraTypical or QuantityNames.Extra99;

    private static double Up(double percent) => Steps(percent, Math.Ceiling, -1e-9);

    private static double Down(double percent) => Steps(percent, Math.Floor, 1e-9);

    private static double Steps(double percent, Func<double, double> whole, double slack)
    {
        if (!(percent > 0))
            return percent;
        double step = Math.Pow(10, Math.Floor(Math.Log10(percent)) - 2);
        return whole(percent / step + slack) * step;
    }
}
