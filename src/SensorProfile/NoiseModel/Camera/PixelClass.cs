namespace SensorProfile.NoiseModel.Camera;

/// <summary>Pixels that share a dark rate and a temperature law.</summary>
/// <param name="Weight">Share of all pixels, 0…1; the classes of a population sum to 1.</param>
/// <param name="RateAtReference">Dark rate at the reference temperature, e-/px/s.</param>
/// <param name="LawExponent">1 for pixels that follow the typical law; ΔT₂(typical)/ΔT₂(own) for those that do
/// not.</param>
/// <param name="Hot">Whether the pixel counts as hot rather than typical.</param>
internal readonly record struct PixelClass(double Weight, double RateAtReference, double LawExponent, bool Hot)
{
    /// <summary>Dark rate at another temperature, e-/px/s.</summary>
    /// <remarks>
    /// The floor, common to all pixels, stays; the rest grows as g^(ΔT₂,typical/ΔT₂,own): a pure doubling law stays
    /// one, and the curvature of any other law is kept.
    /// </remarks>
    internal double RateAt(Growth growth)
    {
        double floor = Math.Min(RateAtReference, growth.Floor);
        return floor
            + (RateAtReference - floor) * (LawExponent == 1 ? growth.Thermal : Math.Pow(growth.Thermal, LawExponent));
    }
}
