namespace SensorProfile.Decisions;

/// <summary>The closed form for pixels that all double alike; the general search must agree with it.</summary>
internal static class DarkResidualLimit
{
    /// <summary>2^(δ/ΔT₂) − 1: residual of a dark taken δ °C warmer than the lights, in units of D·t.</summary>
    internal static double Residual(double warmerCelsius, double doubling) => Math.Pow(2, warmerCelsius / doubling) - 1;

    /// <summary>ΔT₂·log₂(1 + fσ/(Dt)), °C.</summary>
    /// <param name="ratio">fσ/(Dt): accepted residual over dark signal.</param>
    /// <param name="doubling">ΔT₂, °C.</param>
    internal static double Warmer(double ratio, double doubling) => doubling * Math.Log2(1 + ratio);

    /// <summary>−ΔT₂·log₂(1 − fσ/(Dt)), °C; null (unlimited) from fσ = Dt on.</summary>
    internal static double? Colder(double ratio, double doubling) => ratio >= 1 ? null : -doubling * Math.Log2(1 - ratio);
}
