namespace SensorProfile.Profiles.Darks;

/// <summary>Dark current of one night whose sensor temperature is not known.</summary>
public sealed record DarkNight
{
    /// <summary>Start of the night's first dark; null when the headers do not say.</summary>
    public DateTimeOffset? StartUtc { get; init; }

    /// <summary>Always null: the thermometer is missing, stuck or impossible.</summary>
    public double? Temperature { get; init; }

    /// <summary>Dark rate of the median pixel; null when none was seen.</summary>
    public Measurement? TypicalRate { get; init; }

    /// <summary>Mean dark rate of all pixels; null when none was seen.</summary>
    public Measurement? MeanRate { get; init; }

    /// <summary>Dark rate from the growth of the noise; null when none was seen.</summary>
    public Measurement? RateFromVariance { get; init; }

    /// <summary>Exposures, s.</summary>
    public IReadOnlyList<double> Exposures { get; init; } = [];

    /// <summary>Number of dark frames.</summary>
    public int Frames { get; init; }
}
