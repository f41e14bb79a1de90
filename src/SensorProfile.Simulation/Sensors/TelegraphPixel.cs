namespace SensorProfile.Simulation.Sensors;

/// <summary>One random telegraph pixel.</summary>
/// <param name="Index">Position, row by row from the first row of the file.</param>
/// <param name="Amplitude">Signal added at read-out in the high state, e-.</param>
/// <param name="Rate">Dark rate added in the high state at the reference temperature, e-/px/s.</param>
/// <param name="DwellHigh">Mean time in the high state, s.</param>
/// <param name="DwellLow">Mean time in the low state, s.</param>
internal readonly record struct TelegraphPixel(
    int Index,
    double Amplitude,
    double Rate,
    double DwellHigh,
    double DwellLow
)
{
    /// <summary>Activation energy of <see cref="Rate"/>, eV; null for the ordinary pixels' law.</summary>
    public double? RateEnergy { get; init; }

    /// <summary>Activation energy of the dwell times, eV; the times hold at the reference temperature.</summary>
    public double DwellEnergy { get; init; }

    /// <summary>The pixel with its dwell times at another temperature; the duty cycle stays the same.</summary>
    public TelegraphPixel At(double celsius, double reference)
    {
        if (DwellEnergy == 0)
        {
            return this;
        }
        double slower = 1 / DefectEnergy.Boltzmann(DwellEnergy, celsius, reference);
        return this with { DwellHigh = DwellHigh * slower, DwellLow = DwellLow * slower };
    }

    /// <summary>Share of the time in the high state.</summary>
    public double Duty => DwellHigh / (DwellHigh + DwellLow);

    /// <summary>Correlation time, s: correlation decays as exp(−t/τ), 1/τ = 1/high + 1/low.</summary>
    public double Memory => DwellHigh * DwellLow / (DwellHigh + DwellLow);
}
