using System.Text.Json.Serialization;

namespace SensorProfile.Profiles.Darks;

/// <summary>
/// Whether a master dark can be computed for this camera: every set of darks is left out in turn and computed from the
/// rest.
/// </summary>
public sealed record DarkPredictionProfile
{
    /// <summary>
    /// Whether another exposure at a measured temperature, or another temperature within the measured range, was
    /// computed within the stated uncertainty.
    /// </summary>
    public bool Passed { get; init; }

    /// <summary>Share of all compared pixels within their 95 % interval, 0…1.</summary>
    public double Coverage { get; init; }

    /// <summary>Robust standard deviation of computed minus taken masters over ordinary pixels, e-.</summary>
    public Measurement? Residual { get; init; }

    /// <summary>Every set left out alone: another exposure. Null when no set could be left out.</summary>
    [JsonInclude]
    internal PredictionTest? ByExposure { get; init; }

    /// <summary>Every temperature left out that lies between others. Null with fewer than 3 temperatures.</summary>
    [JsonInclude]
    internal PredictionTest? ByTemperature { get; init; }

    /// <summary>The coldest and the warmest temperature left out. Null with a single temperature.</summary>
    [JsonInclude]
    internal PredictionTest? Beyond { get; init; }

    /// <summary>
    /// The coldest temperature left out: evidence for still colder ones. Null with a single temperature.
    /// </summary>
    [JsonInclude]
    internal PredictionTest? Colder { get; init; }

    /// <summary>
    /// The warmest temperature left out: evidence for still warmer ones. Null with a single temperature.
    /// </summary>
    [JsonInclude]
    internal PredictionTest? Warmer { get; init; }

    /// <summary>
    /// For comparison: the dark of the nearest exposure, minus the bias, multiplied by the ratio of the exposures.
    /// </summary>
    [JsonInclude]
    internal PredictionTest? ScalingByExposure { get; init; }

    /// <summary>
    /// For comparison: the dark of the nearest temperature, minus the bias, multiplied by the ratio that fits best.
    /// </summary>
    [JsonInclude]
    internal PredictionTest? ScalingByTemperature { get; init; }

    /// <summary>
    /// For comparison: the mean of the darks of the next colder and the next warmer temperature, weighted so that the
    /// typical pixel fits.
    /// </summary>
    [JsonInclude]
    internal PredictionTest? Interpolation { get; init; }

    /// <summary>Every set that was left out.</summary>
    [JsonInclude]
    internal IReadOnlyList<LeftOutSet> Sets { get; init; } = [];

    /// <summary>Pixels of the frame that were compared: an evenly spaced sample of large frames.</summary>
    [JsonInclude]
    internal long PixelsCompared { get; init; }

    /// <summary>Error of the common level of left-out sets with little dark signal, e-.</summary>
    [JsonInclude]
    internal Measurement? LevelDoubt { get; init; }

    /// <summary>Further error of the common level, as a share of the typical pixel's dark signal, 0…1.</summary>
    [JsonInclude]
    internal double LevelDoubtShare { get; init; }

    /// <summary>Rate of the typical pixel in the maps at the reference temperature, e-/px/s.</summary>
    [JsonInclude]
    internal double TypicalRate { get; init; }

    /// <summary>Standard uncertainty of the rate of an ordinary pixel in the maps, e-/px/s.</summary>
    [JsonInclude]
    internal double TypicalUncertainty { get; init; }

    /// <summary>
    /// Noise of an ordinary pixel in a frame without exposure, e-: the unit of the brightness classes.
    /// </summary>
    [JsonInclude]
    internal double UnlitNoise { get; init; }

    /// <summary>Share of its pedestal that enters an ordinary pixel's rate, 1/s: it correlates their errors.</summary>
    [JsonInclude]
    internal double PedestalShare { get; init; }

    /// <summary>Median correlation of rate and activation in the laws of single pixels.</summary>
    [JsonInclude]
    internal double LawCorrelation { get; init; }

    /// <summary>Shortest and longest exposure of the darks, s.</summary>
    public IReadOnlyList<double> ExposureRange { get; init; } = [];
}
