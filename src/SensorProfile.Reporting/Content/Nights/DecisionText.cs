using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel.Sky;
using DecisionAnswer = SensorProfile.NoiseModel.Answers.Answer;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>Numbers of the decisions as the pages print them.</summary>
internal static class DecisionText
{
    /// <summary>"−6.12 ± 0.15 °C", or the text for a missing value.</summary>
    public static string Of(DecisionAnswer answer, string name, string absent) =>
        answer.Quantities.GetValueOrDefault(name) is { } value ? QuantityText.Of(value) : absent;

    /// <summary>A sky's rate: "0.709 e⁻/px/s".</summary>
    public static string Rate(SkyRate sky) =>
        sky.Rate.StandardUncertainty > 0
            ? QuantityText.Of(sky.Rate)
            : $"{QuantityText.Number(sky.Rate.Value, 3)} {QuantityText.Unit(sky.Rate.Unit)}";

    /// <summary>The rate without its unit, for a column that names it.</summary>
    public static string BareRate(SkyRate sky) =>
        sky.Rate.StandardUncertainty > 0
            ? QuantityText.Number(sky.Rate.Value, sky.Rate.StandardUncertainty)
            : QuantityText.Number(sky.Rate.Value, 3);

    /// <summary>"a dark sky, broad band", "your sky".</summary>
    public static string Under(SkyRate sky) =>
        sky.Name.StartsWith("your", StringComparison.Ordinal) ? sky.Name : "a " + sky.Name;

    /// <summary>A share in per cent: "4.9 %".</summary>
    public static string Percent(double percent) => QuantityText.Number(percent, 2) + " %";

    /// <summary>"45 s", "12 min", "3 h 20 min".</summary>
    public static string Duration(double seconds)
    {
        long minutes = (long)Math.Round(seconds / 60);
        return seconds < 90 ? $"{QuantityText.Number(Math.Round(seconds))} s"
            : minutes < 90 ? $"{minutes} min"
            : minutes % 60 == 0 ? $"{minutes / 60} h"
            : $"{minutes / 60} h {minutes % 60} min";
    }

    /// <summary>"hot pixels", "nothing".</summary>
    public static string Cause(BindingCause? cause) => cause is { } known ? EnumWord.Spaced(known) : "nothing";
}
