using SensorProfile.Decisions.Settling;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.Tolerance;

/// <summary>How far darks may differ from lights.</summary>
/// <remarks>
/// Quantities: toleranceWarmer, toleranceColder (°C, positive), toleranceExposure (s); null when unlimited.
/// </remarks>
public sealed record ToleranceAnswer : Answer
{
    /// <summary>Whether the limit is known well enough.</summary>
    public required ToleranceVerdict Verdict { get; init; }

    /// <summary>The sky it holds for.</summary>
    public required SkyRate Sky { get; init; }

    /// <summary>The lights it holds for.</summary>
    public required StackConditions Stack { get; init; }

    /// <summary>The accepted losses that the limits respect.</summary>
    public required LossLimits Limits { get; init; }

    /// <summary>
    /// Whether the profile says how dark current spreads over the pixels; without that the limit cannot be told.
    /// </summary>
    public required bool SpreadKnown { get; init; }

    /// <summary>What would settle an answer that is still open.</summary>
    internal SettlingOutcome? Settled { get; init; }

    /// <summary>
    /// What limits the temperature first; null when nothing does.
    /// </summary>
    internal BindingCause? BindingCause { get; init; }

    /// <summary>Each cause alone.</summary>
    internal IReadOnlyList<CauseTolerance> Causes { get; init; } = [];

    /// <summary>
    /// Loads against mismatch, for the plot: 1 is the limit. Ten steps to a decade from 0.02 °C to 20 °C on either
    /// side, coldest darks first.
    /// </summary>
    internal IReadOnlyList<TolerancePoint> Curve { get; init; } = [];

    /// <summary>
    /// The same stack dithered, outliers clipped, and what that would gain; null when dithering was stated, or is not
    /// possible.
    /// </summary>
    internal ToleranceAnswer? Dithered { get; init; }

    /// <summary>Whether the lights need darks closer in temperature than any cooler holds.</summary>
    internal bool BeyondCoolers { get; init; }

    /// <summary>The same question for other skies, when the user gave none.</summary>
    internal IReadOnlyList<ToleranceAnswer> OtherSkies { get; init; } = [];
}
