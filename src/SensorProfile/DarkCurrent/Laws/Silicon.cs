using SensorProfile.Fitting.Models;

namespace SensorProfile.DarkCurrent.Laws;

/// <summary>The band gap of silicon and what follows from it.</summary>
internal static class Silicon
{
    /// <summary>
    /// Band gap E_g(T) = 1.1557 − 7.021e-4·T²/(T + 1108) eV (Varshni form, as in Janesick 2001, Scientific
    /// Charge-Coupled Devices).
    /// </summary>
    public static double Gap(double kelvin) => 1.1557 - 7.021e-4 * kelvin * kelvin / (kelvin + 1108);

    /// <summary>dE_g/dT, eV/K.</summary>
    public static double GapSlope(double kelvin) =>
        -7.021e-4 * kelvin * (kelvin + 2 * 1108) / ((kelvin + 1108) * (kelvin + 1108));

    /// <summary>
    /// ln of the depletion (half-gap) shape T^1.5·exp(−E_g/2kT); the diffusion (full-gap) shape T³·exp(−E_g/kT) is its
    /// square.
    /// </summary>
    public static double LogDepletionShape(double kelvin) =>
        1.5 * Math.Log(kelvin) - Gap(kelvin) / (2 * PhysicalConstants.BoltzmannElectronVoltsPerKelvin * kelvin);

    /// <summary>Derivative of <see cref="LogDepletionShape"/>, 1/K, dE_g/dT included.</summary>
    public static double LogDepletionSlope(double kelvin) =>
        1.5 / kelvin
        + (Gap(kelvin) / kelvin - GapSlope(kelvin)) / (2 * PhysicalConstants.BoltzmannElectronVoltsPerKelvin * kelvin);
}
