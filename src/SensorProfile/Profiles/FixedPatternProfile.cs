namespace SensorProfile.Profiles;

/// <summary>Defect pixels, amplifier glow and structure, from the per-pixel maps.</summary>
public sealed record FixedPatternProfile
{
    /// <summary>Pixels with a dark rate above a threshold, at the reference temperature.</summary>
    public IReadOnlyList<HotPixelCount> HotPixelCurve { get; init; } = [];

    /// <summary>Dark rate at given shares of the pixels (0.5, 0.9, 0.99, 0.999, 0.9999), e-/px/s at the reference temperature.</summary>
    public IReadOnlyList<RateQuantile> RateQuantiles { get; init; } = [];

    /// <summary>Doubling temperature of pixels by dark rate; empty with fewer than 3 temperatures.</summary>
    public IReadOnlyList<DoublingByRate> DoublingByRate { get; init; } = [];

    /// <summary>Defect counts by kind.</summary>
    public DefectCounts? Defects { get; init; }

    /// <summary>The thresholds the counts were made with.</summary>
    public DefectThresholds? Thresholds { get; init; }

    /// <summary>Amplifier glow, strongest place first; empty when none was found.</summary>
    public IReadOnlyList<GlowRegion> Glow { get; init; } = [];

    /// <summary>Temporal noise common to a row, e- (ADU when the gain is unknown).</summary>
    public Measurement? RowNoise { get; init; }

    /// <summary>Temporal noise common to a column, e- (ADU when the gain is unknown).</summary>
    public Measurement? ColumnNoise { get; init; }

    /// <summary>Standard deviation of the bias level from frame to frame, ADU.</summary>
    public Measurement? BiasStability { get; init; }

    /// <summary>Temperature at which the rates hold, °C.</summary>
    public double? ReferenceTemperature { get; init; }
}

/// <summary>Number of pixels above a dark rate.</summary>
/// <param name="Threshold">e-/px/s at the reference temperature.</param>
/// <param name="Count">Pixels above it.</param>
/// <param name="Low">Lower end of the 95 % counting interval.</param>
/// <param name="High">Upper end of the 95 % counting interval.</param>
public sealed record HotPixelCount(double Threshold, long Count, double Low, double High);

/// <summary>Dark rate that a share of the pixels does not exceed.</summary>
/// <param name="Share">0…1.</param>
/// <param name="Rate">e-/px/s at the reference temperature, its uncertainty beside it.</param>
public sealed record RateQuantile(double Share, Measurement Rate);

/// <summary>Doubling temperature of the pixels in a class of dark rate.</summary>
/// <param name="RateFrom">Lower edge of the class, e-/px/s at the reference temperature.</param>
/// <param name="RateTo">Upper edge.</param>
/// <param name="Doubling">Median doubling temperature of the class, °C.</param>
/// <param name="Spread">Standard deviation over the pixels after the measurement noise is removed, °C.</param>
/// <param name="Pixels">Pixels in the class.</param>
public sealed record DoublingByRate(double RateFrom, double RateTo, Measurement Doubling, double Spread, long Pixels);

/// <summary>Defect counts by kind.</summary>
public sealed record DefectCounts
{
    /// <summary>Dark rate above the hot threshold and above 6 of its own standard errors.</summary>
    public long Hot { get; init; }

    /// <summary>Between the warm and the hot threshold.</summary>
    public long Warm { get; init; }

    /// <summary>Response or dark signal far below the neighbours.</summary>
    public long Cold { get; init; }

    /// <summary>No response at all.</summary>
    public long Dead { get; init; }

    /// <summary>At the top code in the longest dark.</summary>
    public long Saturated { get; init; }

    /// <summary>Dark rate that depends on the exposure beyond its error.</summary>
    public long NonLinear { get; init; }

    /// <summary>Flickering between levels (random telegraph signal) or far noisier than the camera.</summary>
    public long Flickering { get; init; }

    /// <summary>Whole columns that stand out.</summary>
    public long Columns { get; init; }

    /// <summary>Whole rows that stand out.</summary>
    public long Rows { get; init; }

    /// <summary>Groups of touching hot pixels (3 or more).</summary>
    public long Clusters { get; init; }
}

/// <summary>Thresholds of the defect search; inputs of the measurement.</summary>
public sealed record DefectThresholds
{
    /// <summary>Hot above the typical pixel by this, e-/px/s at the reference temperature.</summary>
    public double HotRate { get; init; }

    /// <summary>Warm above the typical pixel by this, e-/px/s at the reference temperature.</summary>
    public double WarmRate { get; init; }

    /// <summary>… and by this many of the pixel's own standard errors.</summary>
    public double Significance { get; init; } = 6;

    /// <summary>Flickering: temporal standard deviation above the camera's median by this factor.</summary>
    public double NoiseFactor { get; init; } = 3;

    /// <summary>Dead: response below this share of the neighbourhood.</summary>
    public double DeadResponse { get; init; } = 0.5;
}

/// <summary>One place where the sensor glows.</summary>
public sealed record GlowRegion
{
    /// <summary>In words: "right edge", "upper left corner" …</summary>
    public string Where { get; init; } = "";

    /// <summary>Column of the peak, 1-based as FITS counts.</summary>
    public int X { get; init; }

    /// <summary>Row of the peak, 1-based as FITS counts.</summary>
    public int Y { get; init; }

    /// <summary>Peak rate above the typical floor at the reference temperature, e-/px/s.</summary>
    public Measurement? Peak { get; init; }

    /// <summary>Rate that bounds <see cref="AreaShare"/>, e-/px/s.</summary>
    public double AreaThreshold { get; init; }

    /// <summary>Share of the sensor above that rate, 0…1.</summary>
    public double AreaShare { get; init; }

    /// <summary>Sum over the sensor, e-/s.</summary>
    public Measurement? Total { get; init; }

    /// <summary>Exponent p of glow ∝ exposure^p; 1 means in proportion. Null when it could not be told.</summary>
    public Measurement? ExposureExponent { get; init; }

    /// <summary>Temperature rise that doubles the glow, °C; null when it could not be told or does not depend on temperature.</summary>
    public Measurement? DoublingTemperature { get; init; }
}
