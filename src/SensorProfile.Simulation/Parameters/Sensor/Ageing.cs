namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>How the sensor ages (see <see cref="CameraDescription.Age"/>).</summary>
public sealed record Ageing
{
    /// <summary>
    /// Relative growth of the ordinary pixels' dark current per year, compound (0.05 = 5 % a year). Default 0.
    /// </summary>
    public double DarkGrowth { get; init; }

    /// <summary>New hot pixels per year as a share of all pixels. Default 0.</summary>
    public double NewHotShare { get; init; }

    /// <summary>Share of the hot pixels that heals per year (exponential decay). Default 0.</summary>
    public double HealedShare { get; init; }

    /// <summary>Relative growth of the glow per year, compound. Default 0.</summary>
    public double GlowGrowth { get; init; }

    /// <summary>Change of <see cref="Thermometer.ProbeOffset"/>, °C per year. Default 0.</summary>
    public double ProbeDrift { get; init; }

    /// <summary>Relative change of the gain per year, compound. Default 0.</summary>
    public double GainDrift { get; init; }

    /// <summary>Relative growth of the read noise per year, compound. Default 0.</summary>
    public double ReadNoiseGrowth { get; init; }

    /// <summary>A patch of hot pixels that grows; null (default) for none.</summary>
    public HotPatch? Patch { get; init; }
}
