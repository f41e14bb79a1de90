namespace SensorProfile.Tests.Decisions;

/// <summary>The closed form for pixels that all double alike, by which the general search is judged.</summary>
internal static class ClosedForm
{
    /// <summary>ΔT₂·log₂(1 + fσ/(Dt)), °C.</summary>
    /// <param name="ratio">fσ/(Dt): accepted residual over dark signal.</param>
    /// <param name="doubling">ΔT₂, °C.</param>
    internal static double Warmer(double ratio, double doubling) => doubling * Math.Log2(1 + ratio);

    /// <summary>−ΔT₂·log₂(1 − fσ/(Dt)), °C; null (unlimited) from fσ = Dt on.</summary>
    internal static double? Colder(double ratio, double doubling) =>
        ratio >= 1 ? null : -doubling * Math.Log2(1 - ratio);
}
