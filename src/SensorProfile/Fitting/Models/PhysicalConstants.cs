namespace SensorProfile.Fitting.Models;

/// <summary>Constants of the temperature laws, and doubling temperatures to assume without a law.</summary>
internal static class PhysicalConstants
{
    /// <summary>k/q, eV/K: quotient of two exact SI constants (CODATA 2018).</summary>
    public const double BoltzmannElectronVoltsPerKelvin = 1.380649e-23 / 1.602176634e-19;

    /// <summary>0 °C in kelvin.</summary>
    public const double ZeroCelsius = 273.15;

    /// <summary>
    /// Temperature rise assumed to double the dark current when no law could be fitted, °C (common practice: 5 … 8 °C;
    /// no source).
    /// </summary>
    public const double AssumedDoubling = 6.5;

    /// <summary>
    /// The same when a camera has not been measured at all, °C: a round number that people know (common practice; no
    /// source).
    /// </summary>
    public const double UsualDoubling = 6;
}
