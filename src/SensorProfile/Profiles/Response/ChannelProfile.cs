namespace SensorProfile.Profiles.Response;

/// <summary>The photon-transfer results of one colour of the filter array.</summary>
public sealed record ChannelProfile
{
    /// <summary>R, G1, G2 or B; a plain position such as "P00" when the colours are not known.</summary>
    public string Name { get; init; } = "";

    /// <inheritdoc cref="ModeProfile.BiasLevel"/>
    public Measurement? BiasLevel { get; init; }

    /// <inheritdoc cref="ModeProfile.ReadNoise"/>
    public Measurement? ReadNoise { get; init; }

    /// <inheritdoc cref="ModeProfile.ReadNoiseAdu"/>
    public Measurement? ReadNoiseAdu { get; init; }

    /// <inheritdoc cref="ModeProfile.Gain"/>
    public Measurement? Gain { get; init; }

    /// <inheritdoc cref="ModeProfile.FullWell"/>
    public Measurement? FullWell { get; init; }

    /// <inheritdoc cref="ModeProfile.SaturationLevel"/>
    public Measurement? SaturationLevel { get; init; }

    /// <inheritdoc cref="ModeProfile.DynamicRange"/>
    public Measurement? DynamicRange { get; init; }

    /// <inheritdoc cref="ModeProfile.LinearityError"/>
    public Measurement? LinearityError { get; init; }

    /// <inheritdoc cref="ModeProfile.ResponseNonuniformity"/>
    public Measurement? ResponseNonuniformity { get; init; }

    /// <summary>
    /// Dark rate of this colour at the reference temperature from the level of the median pixel, e-/px/s.
    /// </summary>
    public Measurement? DarkRate { get; init; }

    /// <summary>
    /// Dark rate of this colour at the reference temperature from the growth of the variance, e-/px/s.
    /// </summary>
    public Measurement? DarkRateFromVariance { get; init; }
}
