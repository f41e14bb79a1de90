namespace SensorProfile.Profiles.Darks;

/// <summary>Dark current at one temperature.</summary>
public sealed record DarkCurrentPoint
{
    /// <summary>Mean sensor temperature as read, °C.</summary>
    public double Temperature { get; init; }

    /// <summary>Dark rate of the median pixel, e-/px/s.</summary>
    public Measurement? TypicalRate { get; init; }

    /// <summary>Mean dark rate of all pixels, e-/px/s.</summary>
    public Measurement? MeanRate { get; init; }

    /// <summary>Dark rate from the growth of the temporal variance, defects clipped, e-/px/s.</summary>
    public Measurement? RateFromVariance { get; init; }

    /// <summary>
    /// When the level showed no dark current: the smallest rate that it would have shown, e-/px/s (95 %).
    /// </summary>
    public double? UpperLimit { get; init; }

    /// <summary>Exposures, s, ascending.</summary>
    public IReadOnlyList<double> Exposures { get; init; } = [];

    /// <summary>Number of frames used.</summary>
    public int Frames { get; init; }

    /// <summary>Whether the level grew in proportion to the exposure within its errors.</summary>
    public bool Linear { get; init; }

    /// <summary>The levels behind the lines, one per exposure.</summary>
    public IReadOnlyList<DarkLevel> Levels { get; init; } = [];
}
