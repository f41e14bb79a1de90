namespace SensorProfile.Profiles.Darks;

/// <summary>The masked border in one set of frames.</summary>
internal sealed record MaskedBorderSet
{
    /// <summary>Exposure, s; 0 for bias frames.</summary>
    public double Exposure { get; init; }

    /// <summary>Sensor temperature of the set, °C; null when unknown.</summary>
    public double? Temperature { get; init; }

    /// <summary>Mean level, ADU.</summary>
    public Measurement? Level { get; init; }

    /// <summary>Temporal noise that the pixels of a row share, ADU; null with fewer than two frames.</summary>
    public Measurement? RowNoise { get; init; }

    /// <summary>
    /// Level that the border's own dark charge must add, according to the growth of its noise, ADU; null for bias
    /// frames and without a gain.
    /// </summary>
    public Measurement? Charge { get; init; }

    /// <summary>
    /// How far the black level lies from that of the bias frames, the border's own dark charge subtracted, ADU.
    /// </summary>
    public Measurement? Shift { get; init; }
}
