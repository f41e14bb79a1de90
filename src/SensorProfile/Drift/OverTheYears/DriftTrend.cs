namespace SensorProfile.Drift.OverTheYears;

/// <summary>A quantity at three or more dates, with a weighted straight line.</summary>
public sealed record DriftTrend
{
    /// <summary>Name of the quantity, as in profile.json.</summary>
    public required string Quantity { get; init; }

    /// <summary>Settings of the mode, in words.</summary>
    public required string Mode { get; init; }

    /// <summary>Slope, per year of 365.25 days.</summary>
    public required Measurement PerYear { get; init; }

    /// <summary>Slope over its uncertainty.</summary>
    public required double Z { get; init; }

    /// <summary>Probability of a slope this steep by chance.</summary>
    public required double P { get; init; }

    /// <summary>The same, adjusted for all tests of the answer (Holm 1979).</summary>
    public double AdjustedP { get; init; } = 1;

    /// <summary>Whether <see cref="AdjustedP"/> is below the significance.</summary>
    public bool Changed { get; init; }

    /// <summary>
    /// Whether the values lie on a straight line within their uncertainties; if not, the slope's uncertainty is
    /// widened.
    /// </summary>
    internal bool Straight { get; init; }

    /// <summary>The measured values.</summary>
    public IReadOnlyList<TrendPoint> Points { get; init; } = [];

    /// <summary>The line with its 95 % band, over the measured time and as long again beyond it.</summary>
    internal IReadOnlyList<ForecastPoint> Forecast { get; init; } = [];
}
