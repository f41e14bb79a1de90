using SensorProfile.Simulation.Parameters.Physics;

namespace SensorProfile.Simulation.Sensors;

/// <summary>Temperature dependence of the dark current of one defect; see <see cref="DefectPopulation"/>.</summary>
/// <param name="Energy">Activation energy of generation, eV.</param>
/// <param name="DiffusionShare">Share of diffusion in its rate at the reference temperature.</param>
internal readonly record struct DefectEnergy(double Energy, double DiffusionShare)
{
    private const double BoltzmannElectronVoltsPerKelvin = 8.617333262145177e-5; // CODATA 2018, exact in SI
    private const double ZeroCelsiusInKelvin = 273.15;

    /// <summary>I(T)/I(T_ref).</summary>
    /// <param name="celsius">T, °C.</param>
    /// <param name="reference">T_ref, °C.</param>
    public double Factor(double celsius, double reference)
    {
        double kelvin = celsius + ZeroCelsiusInKelvin,
            referenceKelvin = reference + ZeroCelsiusInKelvin,
            generation = Math.Pow(kelvin / referenceKelvin, 1.5) * Boltzmann(Energy, celsius, reference);
        if (DiffusionShare == 0)
        {
            return generation;
        }
        double diffusion = Math.Pow(kelvin / referenceKelvin, 3) * Math.Exp(Reduced(referenceKelvin) - Reduced(kelvin));
        return (1 - DiffusionShare) * generation + DiffusionShare * diffusion;
    }

    /// <summary>Temperature rise that doubles its rate, °C, by a central difference over ±1 mK.</summary>
    public double Doubling(double celsius, double reference)
    {
        const double step = 1e-3;
        double rise = Math.Log(Factor(celsius + step, reference) / Factor(celsius - step, reference));
        return 2 * step * Math.Log(2) / rise;
    }

    /// <summary>exp(−E/k·(1/T − 1/T_ref)).</summary>
    /// <param name="energy">E, eV.</param>
    /// <param name="celsius">T, °C.</param>
    /// <param name="reference">T_ref, °C.</param>
    public static double Boltzmann(double energy, double celsius, double reference) =>
        Math.Exp(
            -energy
                / BoltzmannElectronVoltsPerKelvin
                * (1 / (celsius + ZeroCelsiusInKelvin) - 1 / (reference + ZeroCelsiusInKelvin))
        );

    /// <summary>E_g(T)/kT of silicon (Varshni's form, Janesick 2001).</summary>
    private static double Reduced(double kelvin) =>
        (1.1557 - 7.021e-4 * kelvin * kelvin / (kelvin + 1108)) / (BoltzmannElectronVoltsPerKelvin * kelvin);
}
