namespace SensorProfile.NoiseModel.Camera;

/// <summary>Pixels that share a dark rate, a temperature law and a glow.</summary>
/// <param name="Weight">Share of all pixels, 0…1; the classes of a population sum to 1.</param>
/// <param name="RateAtReference">Thermal dark rate at the reference temperature, e-/px/s.</param>
/// <param name="LawExponent">1 for pixels that follow the typical law; ΔT₂(typical)/ΔT₂(own) for those that do
/// not.</param>
/// <param name="Hot">Whether the pixel counts as hot rather than typical.</param>
internal readonly record struct PixelClass(double Weight, double RateAtReference, double LawExponent, bool Hot)
{
    /// <summary>What the glow adds at the reference temperature, e-/px/s.</summary>
    internal double Glow { get; init; }

    /// <summary>Slowest thermal rate of the class at the reference temperature, e-/px/s.</summary>
    internal double Low { get; init; } = RateAtReference;

    /// <summary>Fastest thermal rate of the class at the reference temperature, e-/px/s.</summary>
    internal double High { get; init; } = RateAtReference;

    /// <summary>Dark rate at another temperature, e-/px/s.</summary>
    /// <remarks>
    /// The floor, common to all pixels, stays; the rest grows as g^(ΔT₂,typical/ΔT₂,own): a pure doubling law stays
    /// one, and the curvature of any other law is kept. The glow follows its own law.
    /// </remarks>
    internal double RateAt(RateFactors growth) =>
        RateAt(growth, LawExponent == 1 ? growth.Thermal : Math.Pow(growth.Own, LawExponent));

    /// <summary>The same, with g^<see cref="LawExponent"/> already computed.</summary>
    internal double RateAt(RateFactors growth, double power) => At(RateAtReference, Glow, growth, power);

    /// <summary>Dark rate at another temperature of a pixel of any rate, e-/px/s.</summary>
    /// <param name="rate">Thermal rate at the reference temperature, e-/px/s.</param>
    /// <param name="glow">Glow at the reference temperature, e-/px/s.</param>
    /// <param name="growth">Effect of the temperature.</param>
    /// <param name="power">Growth raised to the pixel's law exponent.</param>
    internal static double At(double rate, double glow, RateFactors growth, double power)
    {
        double floor = Math.Min(rate, growth.Floor);
        return floor + (rate - floor) * power + glow * growth.Glow;
    }
}
