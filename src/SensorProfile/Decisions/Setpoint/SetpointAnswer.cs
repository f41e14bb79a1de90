using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>How cold to run, with the curve behind it.</summary>
/// <remarks>
/// Quantities: setpoint, setpointTypical, setpoint99, diminishingReturns, extraTypical, extra99. Verdict: holds |
/// limited | uncooled | cannot-tell.
/// </remarks>
public sealed record SetpointAnswer : WordedAnswer
{
    /// <summary>The sky it holds for.</summary>
    public required SkyRate Sky { get; init; }

    /// <summary>Whether it is for a camera without a cooler.</summary>
    public bool Uncooled { get; init; }

    /// <summary>Exposure of one light, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>Accepted rise of the noise, 0.05 = 5 %.</summary>
    public required double Loss { get; init; }

    /// <summary>Share of the pixels that must stay within it.</summary>
    public required double Share { get; init; }

    /// <summary>Coldest and warmest temperature with darks, °C; beyond them the law speaks alone.</summary>
    public required double MeasuredFrom { get; init; }

    /// <inheritdoc cref="MeasuredFrom"/>
    public required double MeasuredTo { get; init; }

    /// <summary>
    /// Coldest temperature that the cooler holds on the warmest of the nights, its reserve kept, °C; null when its
    /// reach or the nights are not known.
    /// </summary>
    public double? ColdestHeld { get; init; }

    /// <summary>
    /// Where the noise of one light comes from at the set point; for a camera without a cooler, with the warmest sensor
    /// that keeps the loss.
    /// </summary>
    public LightNoise? Noise { get; init; }

    /// <summary>Added noise against temperature, coldest first, 1 °C apart.</summary>
    public IReadOnlyList<SetpointPoint> Curve { get; init; } = [];

    /// <summary>What each ambient temperature allows or costs.</summary>
    public IReadOnlyList<AmbientCost> Ambient { get; init; } = [];

    /// <summary>
    /// The same over all nights given, when there are several: how often each temperature can be had.
    /// </summary>
    public IReadOnlyList<NightsAtTemperature> Nights { get; init; } = [];

    /// <summary>The same question for other skies, when the user gave none.</summary>
    public IReadOnlyList<SetpointAnswer> OtherSkies { get; init; } = [];
}
