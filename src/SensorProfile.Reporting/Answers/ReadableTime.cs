namespace SensorProfile.Reporting.Answers;

/// <summary>Times as people read them: in hours above two hours.</summary>
internal static class ReadableTime
{
    private const double SecondsPerHour = 3600,
        LongestInSeconds = 2 * SecondsPerHour;

    /// <summary>"45 ± 2 s", "5.21 ± 0.10 h"; other units are left alone.</summary>
    public static string Text(Measurement? value) => QuantityText.Of(value is null ? null : Of(value));

    /// <summary>The same quantity in hours where it is longer than two.</summary>
    public static Measurement Of(Measurement value) =>
        value with
        {
            Value = value.Value / Scale(value),
            StandardUncertainty = value.StandardUncertainty / Scale(value),
            Unit = Scale(value) == 1 ? value.Unit : "h",
        };

    /// <summary>The divisor of a quantity and of the ends of its interval.</summary>
    public static double Scale(Measurement value) =>
        value.Unit == "s" && Math.Abs(value.Value) > LongestInSeconds ? SecondsPerHour : 1;
}
