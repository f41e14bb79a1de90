namespace SensorProfile.Profiles.Pattern;

/// <summary>One place where the sensor glows.</summary>
public sealed record GlowRegion
{
    /// <summary>Name of the place: "right edge", "upper left corner" …</summary>
    public string Where { get; init; } = "";

    /// <summary>Column of the peak, 1-based as FITS counts.</summary>
    public int X { get; init; }

    /// <summary>Row of the peak, 1-based as FITS counts.</summary>
    public int Y { get; init; }

    /// <summary>Peak rate above the typical floor at the reference temperature, e-/px/s.</summary>
    public Measurement? Peak { get; init; }

    /// <summary>Rate above which pixels count for <see cref="AreaShare"/>, e-/px/s.</summary>
    public double AreaThreshold { get; init; }

    /// <summary>Share of the sensor above that rate, 0…1.</summary>
    public double AreaShare { get; init; }

    /// <summary>Sum over the sensor, e-/s.</summary>
    public Measurement? Total { get; init; }

    /// <summary>Exponent p of glow ∝ exposure^p; 1 means in proportion. Null when it could not be determined.</summary>
    public Measurement? ExposureExponent { get; init; }

    /// <summary>
    /// Temperature rise that doubles the glow, °C; null when it could not be determined or does not depend on
    /// temperature.
    /// </summary>
    public Measurement? DoublingTemperature { get; init; }

    /// <summary>Signal against exposure at each temperature, coldest first.</summary>
    public IReadOnlyList<GlowSignal> Signals { get; init; } = [];

    /// <summary>Rate against temperature, coldest first.</summary>
    public IReadOnlyList<GlowRate> Rates { get; init; } = [];
}
