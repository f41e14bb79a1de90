using SensorProfile.NoiseModel.Answers;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>A computed master dark, or why there is none.</summary>
/// <remarks>Quantities: level (ADU), uncertaintyTypical, uncertaintyHot (e-, median), equivalentFrames (frames of a
/// master dark as good), coverageTypical, coverageHot, coverageGlow, coverageFlickering (%: pixels of
/// left-out darks within their 95 % interval), coverageAgainst (%) where fresh darks were given.</remarks>
public sealed record DarkPredictionAnswer : Answer
{
    internal DarkPredictionAnswer(PredictionTest test) => Test = test;

    /// <summary>Whether it was computed.</summary>
    public required PredictionVerdict Verdict { get; init; }

    /// <summary>Exposure it was asked for, s.</summary>
    public required double ExposureSeconds { get; init; }

    /// <summary>Temperature it was asked for, °C.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>The master; null when fresh darks contradict it.</summary>
    public ComputedDark? Master { get; init; }

    /// <summary>How well left-out darks were computed at characterisation.</summary>
    public required DarkPredictionProfile Trials { get; init; }

    /// <summary>The trial that applies to this question.</summary>
    public required PredictionProof Proof { get; init; }

    /// <summary>What that trial left behind.</summary>
    internal PredictionTest Test { get; }

    /// <summary>
    /// Classes of pixels for which no uncertainty is claimed, with their number of pixels in the computed dark.
    /// </summary>
    internal IReadOnlyList<(PredictionClass Class, long Pixels)> Refused { get; init; } = [];
}
