namespace SensorProfile.Drift.OverTheYears;

/// <summary>A quantity over three dates or more: a weighted straight line.</summary>
public sealed record DriftTrend
{
    /// <summary>As in profile.json.</summary>
    public required string Quantity { get; init; }

    /// <summary>Settings it holds for, in words.</summary>
    public required string Mode { get; init; }

    /// <summary>Slope, per year of 365.25 days.</summary>
    public required Measurement PerYear { get; init; }

    /// <summary>Slope over its uncertainty.</summary>
    public required double Z { get; init; }

    /// <summary>Probability of so steep a slope by chance.</summary>
    public required double P { get; init; }

    /// <summary>The same for all tests of the answer together (Holm 1979).</summary>
    public double AdjustedP { get; init; } = 1;

    /// <summary>Whether <see cref="AdjustedP"/> is below the significance.</summary>
    public bool Changed { get; init; }

    /// <summary>
    /// Whether the dates lie on a straight line within their uncertainties; where not, the slope's uncertainty is
    /// widened.
    /// </summary>
    internal bool Straight { get; init; }

    /// <summary>The measured values.</summary>
    public IReadOnlyList<TrendPoint> Points { get; init; } = [];

    /// <summary>The line with its 95 % band over the measured time, and beyond it for as long again.</summary>
    internal IReadOnlyList<ForecastPoint> Forecast { get; init; } = [];
}
