using SensorProfile.Simulation.Parameters.Sensor;

namespace SensorProfile.Simulation.Sensors;

/// <summary>Dark current against temperature, relative to the reference temperature (without the floor).</summary>
internal static class RelativeDarkCurrent
{
    private const double BoltzmannElectronVoltsPerKelvin = 8.617333262145177e-5; // CODATA 2018, exact in SI
    private const double ZeroCelsiusInKelvin = 273.15;

    /// <summary>
    /// I(T)/I(T_ref) of the ordinary pixels; see <see cref="DarkCurrentParameters"/> for the three laws.
    /// </summary>
    public static double Factor(DarkCurrentParameters dark, double celsius)
    {
        if (dark.DoublingTemperature is { } doubling)
        {
            return Math.Pow(2, (celsius - dark.ReferenceTemperature) / doubling);
        }
        double kelvin = celsius + ZeroCelsiusInKelvin;
        double reference = dark.ReferenceTemperature + ZeroCelsiusInKelvin;
        if (dark.ActivationEnergy is { } energy)
        {
            double exponent = energy / BoltzmannElectronVoltsPerKelvin * (1 / kelvin - 1 / reference);
            return Math.Pow(kelvin / reference, dark.TemperatureExponent) * Math.Exp(-exponent);
        }
        double share = dark.DiffusionShare ?? 0;
        double gap = ReducedGap(dark, kelvin) - ReducedGap(dark, reference);
        return share * Math.Pow(kelvin / reference, 3) * Math.Exp(-gap)
            + (1 - share) * Math.Pow(kelvin / reference, 1.5) * Math.Exp(-gap / 2);
    }

    /// <summary>
    /// Temperature rise that doubles the rate: ln 2/(d ln I/dT), °C, by a central difference over ±1 mK (relative error
    /// below 1e-8).
    /// </summary>
    public static double Doubling(DarkCurrentParameters dark, double celsius)
    {
        const double step = 1e-3;
        return dark.DoublingTemperature
            ?? 2 * step * Math.Log(2) / Math.Log(Factor(dark, celsius + step) / Factor(dark, celsius - step));
    }

    private static double ReducedGap(DarkCurrentParameters dark, double kelvin)
    {
        double gap = dark.BandGap ?? 1.1557 - 7.021e-4 * kelvin * kelvin / (kelvin + 1108);
        return gap / (BoltzmannElectronVoltsPerKelvin * kelvin);
    }
}
