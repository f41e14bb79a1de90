namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>
/// Dark current of the typical ordinary pixel against temperature. Exactly one law must be given:
/// <see cref="DoublingTemperature"/>, <see cref="ActivationEnergy"/> or <see cref="DiffusionShare"/>.
/// </summary>
public sealed record DarkCurrentParameters
{
    /// <summary>
    /// Rate of the typical (median) ordinary pixel at the reference temperature, without the floor, e-/px/s. Default 0.
    /// </summary>
    public double RateAtReference { get; init; }

    /// <summary>Temperature of the sensor die at which the rates of this description hold, °C. Default −10.</summary>
    public double ReferenceTemperature { get; init; } = -10;

    /// <summary>Law 1: temperature rise that doubles the rate, °C: I(T) = I_ref·2^((T − T_ref)/ΔT₂).</summary>
    public double? DoublingTemperature { get; init; }

    /// <summary>Law 2: activation energy, eV: I(T) = I_ref·(T/T_ref)^m·exp(−E/k·(1/T − 1/T_ref)), T in K.</summary>
    public double? ActivationEnergy { get; init; }

    /// <summary>Exponent m of law 2 (0, 1.5 and 3 are common). Default 0.</summary>
    public double TemperatureExponent { get; init; }

    /// <summary>Law 3: share of diffusion in the rate at the reference temperature, 0…1; the rest is depletion
    /// (Widenhorn et al. 2002,
    /// Proc. SPIE 4669, 193): I(T) = D·T³·exp(−E_g/kT) + G·T^1.5·exp(−E_g/2kT).</summary>
    public double? DiffusionShare { get; init; }

    /// <summary>
    /// Band gap of law 3, eV; null (default) for silicon's, E_g(T) = 1.1557 − 7.021e−4·T²/(T + 1108).
    /// </summary>
    public double? BandGap { get; init; }

    /// <summary>
    /// Part of every pixel's rate that does not depend on temperature (for example from a light leak), e-/px/s. Default
    /// 0.
    /// </summary>
    public double Floor { get; init; }
}
