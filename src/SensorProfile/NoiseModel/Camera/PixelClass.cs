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

    /// <summary>The same from the power of the growth, g^<see cref="LawExponent"/>.</summary>
    internal double RateAt(RateFactors growth, double power) => At(RateAtReference, Glow, growth, power);

    /// <summary>The same for a pixel of any rate.</summary>
    /// <param name="rate">Thermal rate at the reference temperature, e-/px/s.</param>
    /// <param name="glow">Glow at the reference temperature, e-/px/s.</param>
    /// <param name="growth">What the temperature does.</param>
    /// <param name="power">Power of the growth.</param>
    internal static double At(double rate, double glow, RateFactors growth, double power)
    {
        double floor = Math.Min(rate, growth.Floor);
        return floor + (rate - floor) * power + glow * growth.Glow;
    }
}
