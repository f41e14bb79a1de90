using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Setpoint;

/// <summary>How cold to run, with the curve behind it.</summary>
/// <remarks>
/// Quantities: setpoint (null where it cannot be told), setpointTypical, setpoint99, diminishingReturns, extraTypical,
/// extra99. Settling: the darks that would widen the measured range as far as the answer needs.
/// </remarks>
public sealed record SetpointAnswer : Answer
{
    /// <summary>Whether the advised temperature stays within the loss.</summary>
    public required SetpointVerdict Verdict { get; init; }

    /// <summary>
    /// Why it does not; null where it does, and where only the weather limits a camera without a cooler.
    /// </summary>
    internal SetpointLimit? Limit { get; init; }

    /// <summary>What sets the advised temperature.</summary>
    public required SetpointBound Bound { get; init; }

    /// <summary>
    /// The point of <see cref="Curve"/> that the answer is about: the advised temperature; without a cooler, the
    /// warmest sensor that stays within the loss; else the nearest darks.
    /// </summary>
    public required SetpointPoint At { get; init; }

    /// <summary>
    /// Warmest temperature that stays within the loss by the law, measured or not, °C; null when none does.
    /// </summary>
    internal double? LawAsks { get; init; }

    /// <summary>Warmest and coldest advice within the uncertainties, °C, where they lie too far apart.</summary>
    internal Interval? Uncertain { get; init; }

    /// <summary>Noise added by the part that no cooling removes, %.</summary>
    public required double GlowExtra { get; init; }

    /// <summary>Longest light that stays within the loss at <see cref="At"/>, s.</summary>
    internal double? ExposureWithinLoss { get; init; }

    /// <summary>The sky it holds for.</summary>
    public required SkyRate Sky { get; init; }

    /// <summary>Whether the camera has no cooler.</summary>
    public bool Uncooled { get; init; }

    /// <summary>How much an uncooled sensor runs above the air, °C.</summary>
    internal double SelfHeating { get; init; }

    /// <summary>Exposure of one light, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>Accepted rise of the noise, 0.05 = 5 %.</summary>
    public required double Loss { get; init; }

    /// <summary>Share of the pixels that must stay within the loss.</summary>
    public required double Share { get; init; }

    /// <summary>Coldest and warmest temperature with darks, °C; beyond them only the law speaks.</summary>
    public required double MeasuredFrom { get; init; }

    /// <inheritdoc cref="MeasuredFrom"/>
    public required double MeasuredTo { get; init; }

    /// <summary>Warmest of the nights, °C; null when none is known.</summary>
    internal double? WarmestAir { get; init; }

    /// <summary>
    /// Coldest temperature that the cooler holds on the warmest of the nights, its reserve kept, °C; null when its
    /// reach or the nights are not known.
    /// </summary>
    internal double? ColdestHeld { get; init; }

    /// <summary>Reserve of the cooler, °C.</summary>
    internal double Margin { get; init; }

    /// <summary>
    /// Where the noise of one light comes from at the set point; for a camera without a cooler, with the warmest sensor
    /// that stays within the loss.
    /// </summary>
    internal LightNoise? Noise { get; init; }

    /// <summary>Added noise against temperature, coldest first, 1 °C apart, and at <see cref="At"/>.</summary>
    internal IReadOnlyList<SetpointPoint> Curve { get; init; } = [];

    /// <summary>What each ambient temperature allows or costs.</summary>
    internal IReadOnlyList<AmbientCost> Ambient { get; init; } = [];

    /// <summary>
    /// The same over all nights given, when there are several: how often each temperature can be reached.
    /// </summary>
    internal IReadOnlyList<NightsAtTemperature> Nights { get; init; } = [];

    /// <summary>
    /// Nights of a camera without a cooler that lie too far outside the profile: the others are answered.
    /// </summary>
    internal IReadOnlyList<AmbientTemperature> NightsBeyond { get; init; } = [];

    /// <summary>The same question for other skies, when three were asked for.</summary>
    public IReadOnlyList<SetpointAnswer> OtherSkies { get; init; } = [];
}
