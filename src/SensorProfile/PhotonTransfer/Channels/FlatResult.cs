using SensorProfile.Pixels;

namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>Results from the flats.</summary>
internal sealed record FlatResult
{
    /// <summary>One entry per channel; empty without usable flat pairs.</summary>
    public IReadOnlyList<FlatChannel> Channels { get; init; } = [];

    /// <summary>Gain shared by all channels, e-/ADU; null when they differ or were not measured.</summary>
    public Measurement? Gain { get; init; }

    /// <summary>Mean of the flats nearest to half saturation, ADU, row by row; null without flats.</summary>
    public float[]? Mean { get; init; }

    /// <summary>
    /// Temporal variance left in <see cref="Mean"/> over the square of its signal, for each channel; includes that of
    /// the mean bias.
    /// </summary>
    public IReadOnlyList<double> MeanNoise { get; init; } = [];

    /// <summary>
    /// Pixel-to-pixel residual of one half of the flats corrected with the other half, %; null when not measured.
    /// </summary>
    public Measurement? Residual { get; init; }

    /// <summary>The same over areas of 32 × 32 px and larger, %.</summary>
    public Measurement? ResidualOverAreas { get; init; }

    /// <summary>Gain of a channel, e-/ADU; null when it was not measured.</summary>
    public Measurement? GainOf(int channel) => Channels.Count > channel ? Channels[channel].Fit?.Gain : null;

    /// <summary>Gains of all channels, e-/ADU; null when one was not measured.</summary>
    public double[]? ElectronsPerAdu(ColourMosaic mosaic)
    {
        Measurement[] gains = [.. mosaic.Names.Select((_, c) => GainOf(c)).OfType<Measurement>()];
        return gains.Length == mosaic.Channels ? [.. gains.Select(g => g.Value)] : null;
    }
}
