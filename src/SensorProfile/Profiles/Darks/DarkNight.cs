namespace SensorProfile.Profiles.Darks;

/// <summary>
/// Dark current of one night whose sensor temperature is not known, or of the darks of such a night that were alike in
/// warmth.
/// </summary>
public sealed record DarkNight
{
    /// <summary>Start of the night's first dark; null when the headers do not say.</summary>
    public DateTimeOffset? StartUtc { get; init; }

    /// <summary>Always null: the thermometer is missing, stuck or impossible.</summary>
    public double? Temperature { get; init; }

    /// <summary>
    /// How much warmer than the coldest darks of the same night, by the light of the hot pixels, °C; null where the night
    /// was not split.
    /// </summary>
    public Measurement? AboveColdest { get; init; }

    /// <summary>Of the median pixel; null when it was not seen.</summary>
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
