using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Response;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Profiles;

/// <summary>What was measured at one combination of settings.</summary>
public sealed record ModeProfile
{
    /// <summary>The settings these numbers hold for.</summary>
    public ModeSettings Settings { get; init; } = new();

    /// <summary>Mean level of the bias frames, ADU.</summary>
    public Measurement? BiasLevel { get; init; }

    /// <summary>Read noise from bias pairs, quantisation removed, e-.</summary>
    public Measurement? ReadNoise { get; init; }

    /// <summary>Read noise from bias pairs, quantisation removed, ADU.</summary>
    public Measurement? ReadNoiseAdu { get; init; }

    /// <summary>Conversion gain, e-/ADU per stored code.</summary>
    public Measurement? Gain { get; init; }

    /// <summary>Full well, e-.</summary>
    public Measurement? FullWell { get; init; }

    /// <summary>Level at which the variance peaks or the codes end, ADU.</summary>
    public Measurement? SaturationLevel { get; init; }

    /// <summary>Full well over read noise, stops.</summary>
    public Measurement? DynamicRange { get; init; }

    /// <summary>Mean absolute deviation from linearity between 5 % and 95 % of saturation, %.</summary>
    public Measurement? LinearityError { get; init; }

    /// <summary>Photo-response nonuniformity, %.</summary>
    public Measurement? ResponseNonuniformity { get; init; }

    /// <summary>The photon-transfer results per colour of the filter array (R, G1, G2, B); empty for monochrome.</summary>
    public IReadOnlyList<ChannelProfile> Channels { get; init; } = [];

    /// <summary>
    /// What a master of half the flats leaves on the other half from pixel to pixel, beyond photon noise, % of the
    /// signal; null with fewer than 4 flats at one level.
    /// </summary>
    public Measurement? FlatResidual { get; init; }

    /// <summary>
    /// What a master of half the flats leaves on the other half over areas of 32 × 32 px and larger (lamp, dust that
    /// moved), % of the signal; null with fewer than 4 flats at one level.
    /// </summary>
    public Measurement? FlatResidualOverAreas { get; init; }

    /// <summary>Dark current against exposure and temperature; null when no dark frames were usable.</summary>
    public DarkCurrentProfile? DarkCurrent { get; init; }

    /// <summary>
    /// Dark current in ADU per pixel and second where no gain is known: darks alone give rates, law and doubling
    /// temperature, none of which needs the gain. Null where <see cref="DarkCurrent"/> is given.
    /// </summary>
    public DarkCurrentProfile? DarkCurrentAdu { get; init; }

    /// <summary>
    /// Hot pixels in ADU per pixel and second where no gain is known; null where <see cref="FixedPattern"/> counts them.
    /// </summary>
    public HotPixelsAdu? HotPixelsAdu { get; init; }

    /// <summary>Dark current night by night, from darks without a usable sensor temperature.</summary>
    public IReadOnlyList<DarkNight> DarkNights { get; init; } = [];

    /// <summary>Defect pixels, glow and structure; null when not measured.</summary>
    public FixedPatternProfile? FixedPattern { get; init; }

    /// <summary>The points behind gain, saturation and linearity; null when there were no flat pairs.</summary>
    public PhotonTransferProfile? PhotonTransfer { get; init; }

    /// <summary>
    /// How the temporal noise of the single pixels is distributed; null with fewer than 8 bias frames.
    /// </summary>
    public NoiseDistribution? NoiseDistribution { get; init; }
}
