namespace SensorProfile.FixedPattern.BlackLevel;

/// <summary>One bias or dark frame as input to the black-level fit.</summary>
internal sealed record BlackLevelFrame
{
    /// <summary>Name shown to the user.</summary>
    public required string Name { get; init; }

    /// <summary>Index of the set of the frame.</summary>
    public required int Set { get; init; }

    /// <summary>Index of the temperature of its dark signal; null for a bias frame.</summary>
    public int? Series { get; init; }

    /// <summary>Time since the first frame, h; null when unknown.</summary>
    public double? Hours { get; init; }

    /// <summary>Sensor temperature as read, °C; null when unknown.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Exposure as taken, s.</summary>
    public double ExposureSeconds { get; init; }

    /// <summary>Exposure that would collect the same signal at the mean temperature of the series, s.</summary>
    public double EquivalentSeconds { get; init; }

    /// <summary>Median level, ADU.</summary>
    public required double Level { get; init; }

    /// <summary>
    /// Standard uncertainty of the level from pixel noise and the uncertainty of the temperature reading, ADU;
    /// positive.
    /// </summary>
    public required double Noise { get; init; }

    /// <summary>The part of <see cref="Noise"/> that an assumed uncertainty of the temperature reading makes, ADU.</summary>
    public double ReadingNoise { get; init; }

    /// <summary>The frame if the variance of the readings is another one, in units of that assumed.</summary>
    public BlackLevelFrame WithReadings(double factor) =>
        this with
        {
            Noise = Math.Sqrt((Noise * Noise) + ((factor - 1) * ReadingNoise * ReadingNoise)),
            ReadingNoise = ReadingNoise * Math.Sqrt(factor),
        };

    /// <summary>Whether this is the first frame after a pause.</summary>
    public bool First { get; init; }
}
