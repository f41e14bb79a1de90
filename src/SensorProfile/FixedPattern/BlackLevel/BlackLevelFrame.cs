namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>One bias or dark frame as the black level's fit sees it.</summary>
internal sealed record BlackLevelFrame
{
    /// <summary>Name for the user.</summary>
    public required string Name { get; init; }

    /// <summary>Index of its set.</summary>
    public required int Set { get; init; }

    /// <summary>Index of the temperature whose dark signal it carries; null for a bias frame.</summary>
    public int? Series { get; init; }

    /// <summary>Since the first frame, h; null when unknown.</summary>
    public double? Hours { get; init; }

    /// <summary>As read, °C; null when unknown.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>As taken, s.</summary>
    public double ExposureSeconds { get; init; }

    /// <summary>Exposure that would have collected as much at the mean temperature of its series, s.</summary>
    public double EquivalentSeconds { get; init; }

    /// <summary>Median level, ADU.</summary>
    public required double Level { get; init; }

    /// <summary>
    /// Standard uncertainty of the level by the pixels' noise and the reading's doubt, ADU; positive.
    /// </summary>
    public required double Noise { get; init; }

    /// <summary>Whether it was the first after a pause.</summary>
    public bool First { get; init; }
}
