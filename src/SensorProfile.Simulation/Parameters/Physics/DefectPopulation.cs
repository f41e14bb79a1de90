using System.Text.Json.Serialization;

namespace SensorProfile.Simulation.Parameters.Physics;

/// <summary>Bulk or surface defects that generate dark current, one in each chosen pixel.</summary>
/// <remarks>
/// Excess rate of one at T, in K: I_ref·[(1 − d)·(T/T_ref)^1.5·exp(−E/k·(1/T − 1/T_ref)) + d·(T/T_ref)³·exp(−E_g(T)/kT
/// + E_g(T_ref)/kT_ref)]: generation through the defect's own level (Shockley and Read 1952, Hall 1952; E = E_g/2 plus
/// the distance of the level from mid-gap), and diffusion with the whole gap (Widenhorn, Blouke, Weber, Rest and
/// Bodegom 2002, Proc. SPIE 4669, 193). Hot pixels are found between about 0.5 and 0.7 eV (spectroscopy of single
/// levels: McGrath, Doty, Lupino, Ricker and Vallerga 1987, IEEE Trans. Electron Devices 34, 2555; both from memory);
/// irradiated sensors at 0.633 eV.
/// </remarks>
public sealed record DefectPopulation
{
    /// <summary>Share of all pixels, 0…1. Default 0.</summary>
    public double Share { get; init; }

    /// <summary>Distribution of the excess rates. Default power-law.</summary>
    [JsonConverter(typeof(KebabEnumConverter<DefectTail>))]
    public DefectTail Tail { get; init; }

    /// <summary>
    /// At the reference temperature, e-/px/s: the smallest excess rate for the power law, the median for the
    /// log-normal. Default 0.05.
    /// </summary>
    public double Rate { get; init; } = 0.05;

    /// <summary>Exponent of P(rate > r) in the power law. Default 1.</summary>
    public double Slope { get; init; } = 1;

    /// <summary>Spread of ln(rate) of the log-normal. Default 1.</summary>
    public double Spread { get; init; } = 1;

    /// <summary>Largest excess rate, e-/px/s; larger values are drawn again. Default 100.</summary>
    public double Maximum { get; init; } = 100;

    /// <summary>Mean activation energy, eV. Default 0.6.</summary>
    public double Energy { get; init; } = 0.6;

    /// <summary>Standard deviation of the energy from defect to defect, eV. Default 0.03.</summary>
    public double EnergySpread { get; init; } = 0.03;

    /// <summary>Lower limit of the energies, eV. Default 0.3.</summary>
    public double EnergyMinimum { get; init; } = 0.3;

    /// <summary>Upper limit of the energies, eV. Default 1.1.</summary>
    public double EnergyMaximum { get; init; } = 1.1;

    /// <summary>
    /// Mean share of diffusion in the rate at the reference temperature; the share of each defect is uniform between 0
    /// and twice this, at most 1. Default 0.
    /// </summary>
    public double DiffusionShare { get; init; }
}
