namespace SensorProfile.Profiles.Pattern;

/// <summary>How the temperature laws of hot pixels bend away from that of the typical pixel, learnt from all of them.</summary>
/// <remarks>
/// ln I(T) = ln I(T_ref) + a·(x + second·x² + third·x³), x the logarithm of the typical pixel's law over its value at the
/// reference temperature (where that law has a floor, 1/kT_ref − 1/kT, 1/eV).
/// </remarks>
/// <param name="Second">Coefficient of x².</param>
/// <param name="Third">Coefficient of x³.</param>
public sealed record HotLawBend(double Second, double Third)
{
    /// <summary>x + second·x² + third·x³.</summary>
    internal double At(double x) => x + x * x * (Second + x * Third);
}
