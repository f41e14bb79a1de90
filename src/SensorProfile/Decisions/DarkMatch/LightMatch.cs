using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>The verdict on one light set.</summary>
public sealed record LightMatch
{
    internal LightMatch(MatchReason reason) => Reason = reason;

    /// <summary>The light set.</summary>
    public required MatchedSet Lights { get; init; }

    /// <summary>The dark set judged best for it; null when no dark set has its settings.</summary>
    public MatchedSet? Darks { get; init; }

    /// <summary>Whether the darks fit.</summary>
    public required MatchVerdict Verdict { get; init; }

    /// <summary>Rise of the noise of the stack from using these darks, %; null when it is not known.</summary>
    public Measurement? Loss { get; init; }

    /// <summary>The cause that uses most of its limit; null when it is not known.</summary>
    internal BindingCause? BindingCause { get; init; }

    /// <summary>Whether the verdict is for darks scaled to the lights.</summary>
    public bool Scaled { get; init; }

    /// <summary>
    /// Share of the pixels that sky and dark current fill in one light, %, which no dark corrects; null when there are
    /// none, or when it is not known.
    /// </summary>
    internal Measurement? FullPixels { get; init; }

    /// <summary>Why.</summary>
    internal MatchReason Reason { get; init; }

    /// <summary>
    /// Frames that would settle an open verdict; empty when none would, or when only a header entry is missing.
    /// </summary>
    internal IReadOnlyList<SettlingFrames> Settling { get; init; } = [];

    /// <summary>
    /// The lights one by one, against the tolerance of the darks; null for a pair that is not the best for its lights.
    /// </summary>
    internal LightNight? Night { get; init; }

    /// <summary>Temperature of the darks above that of the lights, °C; null when one is unknown.</summary>
    public double? TemperatureDifference { get; init; }

    /// <summary>Set point of the cooler that all these lights share and hold, °C; null when there is none.</summary>
    internal double? SetPoint { get; init; }

    /// <summary>Difference between the warmest and the coldest light, °C; null when unknown.</summary>
    internal double? Drift { get; init; }
}
