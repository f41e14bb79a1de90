using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>How the common abscissa of the laws of hot pixels departs from that of the typical pixel.</summary>
/// <remarks>x′ = x + second·x² + third·x³; value and slope at the reference temperature do not change.</remarks>
/// <param name="Second">Coefficient of x².</param>
/// <param name="Third">Coefficient of x³.</param>
internal readonly record struct LawBend(double Second, double Third)
{
    /// <summary>The bend stored in a profile; none if it has none.</summary>
    public static LawBend From(HotLawBend? known) => known is null ? None : new(known.Second, known.Third);

    /// <summary>No bend.</summary>
    public static LawBend None => default;

    /// <summary>x′.</summary>
    public double At(double x) => x + x * x * (Second + x * Third);
}
