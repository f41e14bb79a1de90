namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>Random telegraph pixels: each jumps between two states with exponential dwell times.</summary>
public sealed record TelegraphPixels
{
    /// <summary>Share of all pixels, 0…1. Default 0.</summary>
    public double Share { get; init; }

    /// <summary>
    /// Median signal added at read-out in the high state, at any exposure, e-. Default 0.
    /// </summary>
    public double Amplitude { get; init; }

    /// <summary>
    /// Median dark rate added in the high state, at the reference temperature, e-/px/s; follows the ordinary pixels'
    /// law. Default 0.
    /// </summary>
    public double Rate { get; init; }

    /// <summary>Spread of ln(amplitude) and ln(rate) over the pixels. Default 0.</summary>
    public double AmplitudeSpread { get; init; }

    /// <summary>Median over the pixels of the mean time in the high state, s. Default 60.</summary>
    public double DwellHigh { get; init; } = 60;

    /// <summary>Median over the pixels of the mean time in the low state, s. Default 120.</summary>
    public double DwellLow { get; init; } = 120;

    /// <summary>Spread of ln(dwell time) over the pixels. Default 0.</summary>
    public double DwellSpread { get; init; }
}
